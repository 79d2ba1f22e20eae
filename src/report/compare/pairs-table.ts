import type { Cell, Column, Table } from "../table.js";
import { addedCells, addedColumns } from "./added-columns.js";
import type { Limit, PairHeader, PairRow } from "./pair.js";

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
    columns: [...kept, ...addedColumns(limit)],
    rows: rows.map((row) => {
      const cells: Cell[] = [...row.cells];
      const lab = [...row.standard, ...row.sample];
      columns.forEach((column, i) => {
        cells[column] = lab[i]!;
      });
      cells.push(...addedCells(row, limit));
      return cells;
    }),
  };
}
