import { cellPlace } from "../../core/csv/csv-cell.js";
import type { Fault } from "../../core/fault.js";

/** A fault of one cell, with its place. */
export const inRow = (row: number, column: string, { path: _path, message, ...fault }: Fault): Fault => ({
  ...fault,
  path: ["row", row, column],
  message: `${cellPlace(row, column)}: ${message}`,
});
