import { done, error, type Fault, type Outcome } from "../fault.js";
import type { CsvRow } from "./csv-format.js";

/** The columns of a file by the names in its first row. */
export interface CsvHeader {
  readonly row: number;
  /** Without blanks around them, in the order of the file. */
  readonly names: readonly string[];
  /** Where a column is, counted from 0; undefined where there is none of that name. */
  readonly at: (name: string) => number | undefined;
}

/**
 * Reads the first row of a file, which must name the columns that are needed, in any order; others are kept. Every
 * missing or doubled name is a fault.
 * @example
 * csvHeader({ row: 1, fields: [" b2", "note", "L1 "] }, ["L1"]).value.at("L1") // => 2
 * csvHeader({ row: 1, fields: ["L1", "a1"] }, ["b1"]).faults[0].message // => "row 1: there is no column b1"
 */
export function csvHeader({ row, fields }: CsvRow, needed: readonly string[] = []): Outcome<CsvHeader> {
  const names = fields.map((name) => name.trim());
  const places = new Map<string, number>();
  const faults: Fault[] = [];
  for (const [index, name] of names.entries()) {
    if (!places.has(name)) places.set(name, index);
    else if (name !== "")
      faults.push(
        error(
          "csv-column-twice",
          ["row", row, name],
          `row ${row}: there are two columns ${name}`,
          "give each column a name of its own",
        ),
      );
  }
  for (const name of needed)
    if (!places.has(name))
      faults.push(
        error(
          "csv-column-missing",
          ["row", row, name],
          `row ${row}: there is no column ${name}`,
          `the first row must name ${needed.join(", ")}`,
        ),
      );
  if (faults.length > 0) return { ok: false, faults };
  return done({ row, names, at: (name) => places.get(name) });
}

/** The fault of a file without a first row. */
export const noHeader = (example: string): Fault =>
  error("csv-empty", ["row", 1], "there is no header row", `begin with the names of the columns: ${example}`);
