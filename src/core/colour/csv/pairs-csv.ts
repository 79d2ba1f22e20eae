import { cellNumber, cellPlace, extraCells } from "../../csv/csv-cell.js";
import type { CsvHeader } from "../../csv/csv-header.js";
import type { ReadNumber } from "../../csv/csv-number.js";
import { done, error, type Fault, failed, type Outcome } from "../../fault.js";
import type { Lab } from "../../model/colour.js";
import { labFault } from "../screen/parse-colour.js";

/** The columns that a file of pairs must have; it may have others. */
export const pairColumnNames = ["L1", "a1", "b1", "L2", "a2", "b2"] as const;

/** Two colours of one row. */
export interface LabPair {
  readonly standard: Lab;
  readonly sample: Lab;
}

/** Reads one row of a file of pairs. A fault names the row and the column, and its path is ["row", row, column]. */
export type ReadPair = (fields: readonly string[], row: number) => Outcome<LabPair>;

/** Starts reading the rows of a file of pairs under its header, which must name the six columns. */
export function pairReader({ names, at }: CsvHeader, read: ReadNumber): ReadPair {
  const columns = pairColumnNames.map((name) => at(name)!);
  return (fields, row) => {
    const extra = extraCells(fields, names.length, row);
    if (extra !== undefined) return failed(extra);
    const faults: Fault[] = [];
    const values: number[] = [];
    for (let i = 0; i < columns.length; i++) {
      const value = cellNumber(fields, columns[i]!, row, pairColumnNames[i]!, read);
      if (typeof value === "number") values.push(value);
      else faults.push(value);
    }
    if (faults.length > 0) return { ok: false, faults };
    const standard = values.slice(0, 3) as unknown as Lab;
    const sample = values.slice(3) as unknown as Lab;
    for (const [lab, n] of [
      [standard, 1],
      [sample, 2],
    ] as const) {
      const wrong = labFault(lab);
      if (wrong === undefined) continue;
      const name = `${wrong[0]}${n}`;
      faults.push(error("pairs-range", ["row", row, name], `${cellPlace(row, name)}: ${wrong}`));
    }
    return faults.length > 0 ? { ok: false, faults } : done({ standard, sample });
  };
}
