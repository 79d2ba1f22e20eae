import { done, error, failed, type Outcome } from "../core/fault.js";
import type { Column, Table } from "./table.js";

/**
 * A column by its whole name, or by its name without the currency that ends it; in a table without a currency also by
 * the name that the column has where there is one.
 */
const named = (columns: readonly Column[], name: string): number => {
  const exact = columns.findIndex(({ key }) => key === name);
  if (exact >= 0) return exact;
  const without = !columns.some(({ key }) => /_[A-Z]{3}$/.test(key));
  return columns.findIndex(
    ({ key, digits }) =>
      (/^_[A-Z]{3}$/.test(key.slice(name.length)) && key.startsWith(name)) ||
      (without && digits !== undefined && /^_[A-Z]{3}$/.test(name.slice(key.length)) && name.startsWith(key)),
  );
};

/** Positions of the columns that were asked for, in the order asked; every unknown name is a fault. */
export function columnPositions(columns: readonly Column[], names: readonly string[]): Outcome<number[]> {
  const positions = names.map((name) => named(columns, name));
  const unknown = names.filter((_, i) => positions[i]! < 0);
  if (unknown.length === 0) return done(positions);
  const known = columns.map(({ key }) => key).join(", ");
  return failed(
    ...unknown.map((name) =>
      error("unknown-column", ["--columns"], `there is no column "${name}"`, `the columns are ${known}`),
    ),
  );
}

/** A table with some of its columns only, in the order asked for. */
export function selectColumns(table: Table, names: readonly string[]): Outcome<Table> {
  const positions = columnPositions(table.columns, names);
  if (!positions.ok) return positions;
  return done({
    columns: positions.value.map((i) => table.columns[i]!),
    rows: table.rows.map((row) => positions.value.map((i) => row[i] ?? null)),
  });
}
