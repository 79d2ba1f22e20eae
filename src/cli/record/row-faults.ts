import { error, type Fault, warning } from "../../core/fault.js";
import { counted } from "../../core/quantity/text/counted.js";
import type { LogStyle } from "../../log/read/log-style.js";
import { checkRow } from "../../log/row/check-row.js";
import { inspectLoads, inspects } from "../../log/row/inspect-loads.js";
import type { LogRow } from "../../log/row/log-row.js";
import type { LogValues } from "../../log/row/log-values.js";
import { optionOf, optionSaid } from "./cells.js";

/** A fault of a cell as one of the option that fills it. */
export function ofOption({ path: [column], ...fault }: Fault): Fault {
  return fault.code === "log-needs"
    ? { ...fault, path: [], help: `add ${optionSaid(String(column))}` }
    : { ...fault, path: [optionOf(String(column))] };
}

/** A row's cells, without those of a plan that the log has no column for and the event does not need. */
export function cellsFor(
  { values, planned = {} }: { readonly values: LogValues; readonly planned?: LogValues },
  { columns }: LogStyle,
): LogValues {
  const idle = (name: string): boolean =>
    !columns.includes(name) &&
    planned[name as keyof LogValues] !== undefined &&
    planned[name as keyof LogValues] === values[name as keyof LogValues];
  const kept: LogValues = Object.fromEntries(Object.entries(values).filter(([name]) => !idle(name)));
  const needed = checkRow({ time: { text: "", seconds: 0 }, ...kept })
    .faults.filter(({ code }) => code === "log-needs")
    .map(({ path }) => path[0] as keyof LogValues);
  return { ...kept, ...Object.fromEntries(needed.map((name) => [name, values[name]])) };
}

/** Cells that the log has no column for. */
export function withoutColumn(rows: readonly LogValues[], { columns }: LogStyle): Fault[] {
  const missing = new Set(rows.flatMap((row) => Object.keys(row)).filter((name) => !columns.includes(name)));
  return [...missing].map((name) =>
    error(
      "log-column-missing",
      [],
      `the log has no column ${name}`,
      `add ${name} to its first row${rows.length === 1 ? `, or leave out ${optionOf(name)}` : ""}`,
    ),
  );
}

/** Rows of another plan that nobody has confirmed. */
export const alreadyPlanned = (unconfirmed: readonly number[]): Fault[] =>
  unconfirmed.length === 0
    ? []
    : [
        warning(
          "log-unconfirmed",
          [],
          `the log already has ${counted(unconfirmed.length, "row")} without a time, from row ${unconfirmed[0]} on`,
          "delete those that were not done, so that none is taken for a row of this plan",
        ),
      ];

/** What a bath can do only once at a time. */
const once: readonly string[] = ["made-up", "load", "dump"];

/** A row that the log has already: at the same time, or as the same row of the same plan on the same day. */
export function recordedAgain(row: LogRow, note: string | undefined, rows: readonly LogRow[]): Fault[] {
  if (!once.includes(row.event)) return [];
  const day = ({ time }: LogRow): string => time.text.slice(0, "2027-04-16".length);
  const first = rows.find(
    (one) =>
      one.bath === row.bath &&
      one.event === row.event &&
      (one.time.seconds === row.time.seconds ||
        (note !== undefined && one.note === note && day(one) === day(row))),
  );
  return first === undefined
    ? []
    : [
        warning(
          "log-again",
          [],
          `row ${first.row} of the log, of ${first.time.text}, says the same`,
          "both rows count: delete one if it happened once",
        ),
      ];
}

/** What is wrong with a new row only beside those that are there. */
export function amongOthers(row: LogRow, rows: readonly LogRow[]): Fault[] {
  if (inspects(row))
    return inspectLoads([...rows.filter(({ time }) => time.seconds <= row.time.seconds), row])
      .faults.filter((found) => found.row === row)
      .map(({ fault }) => ofOption(fault));
  const last = rows.at(-1);
  return last === undefined || last.time.seconds <= row.time.seconds
    ? []
    : [
        warning(
          "log-time-back",
          ["--time"],
          `${row.time.text} is before the last row, of ${last.time.text}`,
          "rows count in the order of their times; correct the one that is wrong",
        ),
      ];
}
