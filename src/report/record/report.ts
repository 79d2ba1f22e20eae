import { counted } from "../../core/quantity/text/counted.js";
import { paragraph, type Report } from "../report.js";
import type { Cell, Column, Table } from "../table.js";
import { trimmed } from "../words/digits.js";

/** Rows that went into a log. */
export interface Recorded {
  readonly log: string;
  /** Columns of a log, in their usual order. */
  readonly columns: readonly string[];
  /** Cells by column; those that are empty are left out. */
  readonly rows: readonly Readonly<Record<string, string | number | undefined>>[];
  /** The load that a reading belongs to. */
  readonly load: { readonly time: string; readonly part: string; readonly shade?: string } | undefined;
}

/** What people see of many rows; the log has the rest. */
const inShort: readonly string[] = ["time", "bath", "event", "part", "shade", "parts", "seconds"];

const digits = (value: number): string => trimmed(value, 4);

const tableOf = ({ rows }: Recorded, names: readonly string[]): Table => ({
  columns: names.map((key): Column => ({ key, title: key, digits })),
  rows: rows.map((row) => names.map((name): Cell => row[name] ?? null)),
});

/** Rows that went into a log: as they are for data, only the cells that are filled in for people. */
export function recordReport(recorded: Recorded): Report {
  const { log, columns, rows, load } = recorded;
  const filled = columns.filter((name) => rows.some((row) => row[name] !== undefined));
  const [only, ...others] = rows;
  const table: Table =
    only !== undefined && others.length === 0
      ? {
          columns: [
            { key: "column", title: "column" },
            { key: "value", title: "recorded", digits, align: "left" },
          ],
          rows: filled.map((name) => [name, only[name] ?? null]),
        }
      : tableOf(
          recorded,
          filled.filter((name) => inShort.includes(name)),
        );
  const belongs =
    load === undefined
      ? []
      : [
          paragraph(
            `It belongs to the load of ${load.time}: ${load.part}${load.shade === undefined ? "" : `, ${load.shade}`}.`,
          ),
        ];
  return {
    name: "record",
    data: { log, rows, load: load ?? null },
    rows: tableOf(recorded, columns),
    blocks: [
      paragraph(
        rows.some(({ time }) => time !== undefined)
          ? `${counted(rows.length, "row")} recorded in ${log}.`
          : `${counted(rows.length, "planned row")} written to ${log}: fill in the time of each when it is done; until then it does not count.`,
      ),
      { kind: "table", table },
      ...belongs,
    ],
  };
}
