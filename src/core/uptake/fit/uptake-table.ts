import { done, error, type Fault, failed, type Outcome, warning } from "../../fault.js";
import type { UptakePoint } from "./fit-law.js";
import { findColumns, type ReadingColumns } from "./table-columns.js";

export interface UptakeTable {
  readonly points: readonly UptakePoint[];
  readonly timeColumn: string;
  /** Unit of the time column as it was written; the points are in seconds. */
  readonly timeUnit: { readonly name: string; readonly seconds: number };
  readonly uptakeColumn: string;
  readonly meaning: ReadingColumns["meaning"];
}

/**
 * Time and uptake from the rows of a table, the first of which holds the column names. Rows are counted from 1
 * as a spreadsheet does; empty rows are passed over. K/S is counted from the undyed part: where the table has
 * rows at time 0, their mean is taken off all rows, with a warning. Every bad cell is a fault with its place.
 * @example
 * readUptakeTable([["time_min", "uptake"], ["1", "2.5"]]).value.points // => [{ seconds: 60, uptake: 2.5, row: 2 }]
 */
export function readUptakeTable(
  rows: readonly (readonly string[])[],
  options: { readonly decimal?: "point" | "comma"; readonly uptakeColumn?: string } = {},
): Outcome<UptakeTable> {
  const header = (rows[0] ?? []).map((cell) => cell.trim());
  if (header.every((name) => name === ""))
    return failed(error("table-empty", ["row", 1], "the table has no header row", "time_s,uptake"));
  const twice = header.find((name, index) => name !== "" && header.indexOf(name) !== index);
  if (twice !== undefined)
    return failed(error("table-column-twice", ["row", 1, twice], `the column "${twice}" stands twice`));
  const columns = findColumns(header, options.uptakeColumn);
  if (!("time" in columns)) return failed(...columns);
  const faults: Fault[] = [];
  const points: UptakePoint[] = [];
  for (const [index, cells] of rows.entries()) {
    if (index === 0 || cells.every((cell) => cell.trim() === "")) continue;
    const row = index + 1;
    const extra = cells.findIndex((cell, j) => j >= header.length && cell.trim() !== "");
    if (extra >= 0) {
      const message = `row ${row} has more cells than the header`;
      faults.push(error("table-extra-cell", ["row", row], message, commaHelp));
      continue;
    }
    const [time, uptake] = [columns.time, columns.uptake].map((j) =>
      readCell(cells[j] ?? "", row, header[j]!, options.decimal ?? "point"),
    );
    for (const cell of [time!, uptake!]) if (typeof cell !== "number") faults.push(cell);
    if (typeof time === "number" && typeof uptake === "number")
      points.push({ seconds: time * columns.secondsPerUnit, uptake, row });
  }
  if (faults.length > 0) return { ok: false, faults };
  const counted = columns.meaning === "ks" ? fromUndyed(points) : { points, faults: [] };
  return done(
    {
      points: counted.points,
      timeColumn: header[columns.time]!,
      timeUnit: { name: columns.unit, seconds: columns.secondsPerUnit },
      uptakeColumn: header[columns.uptake]!,
      meaning: columns.meaning,
    },
    counted.faults,
  );
}

const commaHelp = "if the numbers have a decimal comma, separate the cells by ;";

function readCell(text: string, row: number, column: string, decimal: "point" | "comma"): number | Fault {
  const cell = text.trim();
  const place = ["row", row, column];
  if (cell === "")
    return error("table-cell-empty", place, `row ${row}, ${column}: empty`, "fill it in or delete the row");
  const plain = decimal === "comma" ? cell.replace(",", ".") : cell;
  if (/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain)) return Number(plain);
  const message = `row ${row}, ${column}: "${cell}" is not a number`;
  if (decimal === "point" && /^[+-]?\d+,\d+$/.test(cell))
    return error(
      "table-cell-number",
      place,
      message,
      "use a decimal point, or a decimal comma in every cell with ; between the cells",
    );
  return error(
    "table-cell-number",
    place,
    message,
    `write the number alone; its unit belongs into the column name`,
  );
}

/** Takes the mean reading at time 0 off every reading. */
function fromUndyed(points: readonly UptakePoint[]): {
  points: readonly UptakePoint[];
  faults: readonly Fault[];
} {
  const undyed = points.filter(({ seconds }) => seconds === 0);
  if (undyed.length === 0)
    return {
      points,
      faults: [
        warning(
          "table-ks-undyed",
          [],
          "K/S is taken as counted from the undyed part",
          "if it is not, add a row at time 0 with the K/S of the undyed part",
        ),
      ],
    };
  const base = undyed.reduce((sum, { uptake }) => sum + uptake, 0) / undyed.length;
  if (base === 0) return { points, faults: [] };
  return {
    points: points.map((point) => ({ ...point, uptake: point.uptake - base })),
    faults: [
      warning(
        "table-ks-undyed",
        [],
        `K/S ${Number(base.toPrecision(6))} of the undyed part (time 0) is taken off every row`,
      ),
    ],
  };
}
