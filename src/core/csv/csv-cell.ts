import { error, type Fault } from "../fault.js";
import type { ReadNumber } from "./csv-number.js";

/** Longest part of a cell that a message shows. */
const shownAtMost = 30;
const shown = (cell: string): string =>
  JSON.stringify(cell.length > shownAtMost ? `${cell.slice(0, shownAtMost)}…` : cell);

/** A place in a file, for people. */
export const cellPlace = (row: number, column: string): string => `row ${row}, column ${column}`;

/** The number in a column of a row, or why there is none; `help` says how numbers of this column are written. */
export function cellNumber(
  fields: readonly string[],
  at: number,
  row: number,
  column: string,
  read: ReadNumber,
  help?: string,
): number | Fault {
  const cell = fields[at];
  const path = ["row", row, column];
  if (cell === undefined)
    return error("csv-row-short", path, `row ${row}: the row ends before column ${column}`);
  const value = read(cell);
  if (value !== undefined) return value;
  const place = cellPlace(row, column);
  if (cell.trim() === "")
    return error("csv-cell-empty", path, `${place}: the cell is empty`, "fill it in or delete the row");
  const otherMark = /^\s*[+-]?\d*[.,]\d+\s*$/.test(cell);
  return error(
    "csv-number",
    path,
    `${place}: ${shown(cell.trim())} is not a number`,
    otherMark ? "write a decimal point in every number of the file, or a decimal comma in every one" : help,
  );
}

/** The fault of cells behind the last column. */
export function extraCells(fields: readonly string[], columns: number, row: number): Fault | undefined {
  if (fields.length <= columns || fields.slice(columns).every((cell) => cell.trim() === "")) return undefined;
  return error(
    "csv-row-long",
    ["row", row],
    `row ${row}: the row has more cells than the header`,
    "numbers with a decimal comma need ; between the cells, or quotes",
  );
}
