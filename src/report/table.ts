import type { Tone } from "./format/paint.js";

/** A value in a table: text, a number in the column's unit, or nothing. */
export type Cell = string | number | null;

/** A column, for every format. */
export interface Column {
  /** Header in CSV and TSV, the unit in the name: `concentrate_mL`. */
  readonly key: string;
  /** Header for people. */
  readonly title: string;
  /** Said after the title where people read it. */
  readonly unit?: string;
  /** A number to the digits its measuring tool can use, with a decimal point and no unit. */
  readonly digits?: (value: number) => string;
  /** How people read a number; `digits` where absent. May carry a unit of its own. */
  readonly show?: (value: number) => string;
  /** Alignment of cells; absent: numbers right, text left. */
  readonly align?: "left" | "right";
  /** How the cells are set off on a terminal. */
  readonly tone?: Tone;
  /** Cells hold `#rrggbb`, shown as a block of that colour on a terminal that can. */
  readonly swatch?: boolean;
}

/** Columns and their rows; a row has one cell a column. */
export interface Table {
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** What people read under a row, across all columns; one a row, null where there is nothing. */
  readonly notes?: readonly (string | null)[];
}

/** A column's cell as people read it. */
export function shown(column: Column, cell: Cell | undefined): string {
  if (cell === null || cell === undefined) return "";
  if (typeof cell === "string") return cell;
  return (column.show ?? column.digits ?? String)(cell);
}

/** A column's header as people read it. */
export const heading = (column: Column): string =>
  column.unit === undefined ? column.title : `${column.title} ${column.unit}`;
