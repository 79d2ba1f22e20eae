import { done, error, type Fault, failed, type Outcome } from "../../fault.js";
import type { Lab } from "../../model/colour.js";
import { labFault } from "../screen/parse-colour.js";
import { csvNumber, type DecimalMark } from "./csv-number.js";

/** The columns a file of pairs must have; others may stand beside them. */
const pairColumnNames = ["L1", "a1", "b1", "L2", "a2", "b2"] as const;

/** Where those columns stand in a file. */
export type PairColumns = readonly number[];

/** Two colours of one row. */
export interface LabPair {
  readonly standard: Lab;
  readonly sample: Lab;
}

/**
 * Finds the columns of a file of pairs in its header row; every missing or doubled one is a fault.
 * @example pairColumns(["id", "L1", "a1", "b1", "L2", "a2", "b2"]).value // => [1, 2, 3, 4, 5, 6]
 */
export function pairColumns(header: readonly string[]): Outcome<PairColumns> {
  const names = header.map((name) => name.trim());
  const faults = pairColumnNames.flatMap((name) => {
    const count = names.filter((found) => found === name).length;
    if (count === 1) return [];
    return error(
      count === 0 ? "pairs-column-missing" : "pairs-column-double",
      [1, name],
      count === 0 ? `row 1: there is no column ${name}` : `row 1: column ${name} stands there ${count} times`,
      `The header must name ${pairColumnNames.join(", ")}.`,
    );
  });
  return faults.length > 0 ? failed(...faults) : done(pairColumnNames.map((name) => names.indexOf(name)));
}

/**
 * Reads one row of a file of pairs. Every fault names the row (the header is row 1) and the column; path is
 * [row, column]. A row with a fault has no value, so whoever reads on can say so and keep the others.
 * @example pairRow(["50", "0", "0", "51", "0", "0"], [0, 1, 2, 3, 4, 5], 2, "point").value.sample // => [51, 0, 0]
 */
export function pairRow(
  fields: readonly string[],
  columns: PairColumns,
  row: number,
  decimal: DecimalMark,
): Outcome<LabPair> {
  const faults: Fault[] = [];
  const values = columns.map((column, i) => {
    const name = pairColumnNames[i]!;
    const cell = fields[column];
    const value = cell === undefined ? undefined : csvNumber(cell, decimal);
    if (cell === undefined)
      faults.push(error("pairs-row-short", [row, name], `row ${row}: the row ends before column ${name}`));
    else if (value === undefined)
      faults.push(error("pairs-number", [row, name], `row ${row}, column ${name}: "${cell}" is no number`));
    return value ?? Number.NaN;
  });
  if (faults.length > 0) return failed(...faults);
  const standard = values.slice(0, 3) as unknown as Lab;
  const sample = values.slice(3) as unknown as Lab;
  for (const [lab, n] of [
    [standard, 1],
    [sample, 2],
  ] as const) {
    const wrong = labFault(lab);
    if (wrong === undefined) continue;
    const name = `${wrong[0]}${n}`;
    faults.push(error("pairs-range", [row, name], `row ${row}, column ${name}: ${wrong}`));
  }
  return faults.length > 0 ? failed(...faults) : done({ standard, sample });
}
