import type { Cell, Column, Table } from "../table.js";
import { differenceColumns, differences, verdictColumn } from "./added-columns.js";
import { type Limit, type PairHeader, type PairRow, verdictOf } from "./pair.js";

/**
 * Rows of a file of pairs as they were, with the differences added: what CSV and TSV write. L, a, b are numbers
 * here, so that they take the decimal sign asked for; every other column stays the text it was.
 */
export function pairsTable(
  { names, columns }: PairHeader,
  rows: readonly PairRow[],
  limit: Limit | undefined,
): Table {
  const kept: Column[] = names.map((name) => ({ key: name, title: name }));
  return {
    columns: [...kept, ...differenceColumns, ...(limit === undefined ? [] : [verdictColumn])],
    rows: rows.map((row) => {
      const cells: Cell[] = [...row.cells];
      const lab = [...row.standard, ...row.sample];
      columns.forEach((column, i) => {
        cells[column] = lab[i]!;
      });
      cells.push(...differences(row));
      if (limit !== undefined) cells.push(verdictOf(row, limit));
      return cells;
    }),
  };
}
