import { type Fault, warning } from "../../../core/fault.js";
import type { Batch, Dye } from "../../../core/model/batch.js";
import { listed } from "../../../core/quantity/text/listed.js";
import { inRow } from "../../read/in-row.js";
import type { LoadRow, LogRow } from "../../row/log-row.js";
import type { FollowedFilling } from "../followed-filling.js";

/** The first row of each name that a column has and the batch file does not. */
function unknown(
  rows: readonly LoadRow[],
  column: "shade" | "base",
  known: readonly string[],
): { readonly row: LoadRow; readonly name: string }[] {
  const first = new Map<string, LoadRow>();
  for (const row of rows) {
    const name = row[column];
    if (name !== undefined && !known.includes(name) && !first.has(name)) first.set(name, row);
  }
  return [...first].map(([name, row]) => ({ name, row }));
}

const has = (what: string, known: readonly string[]): string =>
  known.length === 0 ? `no ${what}` : listed(known, "and");

/** Warnings where loads of a dye name a shade or base that the batch file does not have; each name once. */
export function unknownNames(batch: Batch, dye: Dye, fillings: readonly FollowedFilling[]): Fault[] {
  const rows = fillings.flatMap(({ filling }) => filling.rows.filter((row) => row.event === "load"));
  const shades = batch.shades.filter((shade) => shade.dye === dye).map(({ name }) => name);
  const bases = batch.bases.map(({ name }) => name);
  return [
    ...unknown(rows, "shade", shades).map(({ row, name }) =>
      inRow(
        row.row!,
        "shade",
        warning(
          "log-unknown-shade",
          [],
          `the shade "${name}" of dye "${dye.name}" is not in the batch file: its loads are not judged`,
          `correct the row, or add it under shades, which has ${has("shade of this dye", shades)}`,
        ),
      ),
    ),
    ...unknown(rows, "base", bases).map(({ row, name }) =>
      inRow(
        row.row!,
        "base",
        warning(
          "log-unknown-base",
          [],
          `the base "${name}" is not in the batch file: its loads count as on the base of the dye`,
          `correct the row, or add it under bases, which has ${has("base", bases)}`,
        ),
      ),
    ),
  ];
}

/** Warnings where the tank of a row differs from one of the batch file in capitals only. */
export function otherCapitals({ tanks }: Batch, rows: readonly LogRow[]): Fault[] {
  const names = tanks.map(({ name }) => name);
  const seen = new Set(names);
  return rows.flatMap(({ row, bath }) => {
    if (seen.has(bath)) return [];
    seen.add(bath);
    const meant = names.find((name) => name.toLowerCase() === bath.toLowerCase());
    return meant === undefined
      ? []
      : [
          inRow(
            row!,
            "bath",
            warning(
              "log-other-bath",
              [],
              `bath "${bath}" counts as another one than tank "${meant}"`,
              "write the tank's name alike in all rows, if it is the same one",
            ),
          ),
        ];
  });
}
