import type { Cell, Column, Table } from "./table.js";

/** A column with its one value. */
export type Field = readonly [column: Column, cell: Cell];

/** A table of one row, each column written beside its value. */
export const rowTable = (fields: readonly Field[]): Table => ({
  columns: fields.map(([column]) => column),
  rows: [fields.map(([, cell]) => cell)],
});
