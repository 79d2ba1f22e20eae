import type { Cell, Column } from "./table.js";

/** What JSON writes as one object. */
export type JsonRecord = Readonly<Record<string, unknown>>;

/**
 * A report whose rows come some at a time, so that their number takes no memory; free of any format. `Some` is what
 * comes at once, such as a batch with its orders.
 */
export interface RowReport<Some> {
  /** Name in the JSON's `schema`. */
  readonly name: string;
  /** What JSON has before the rows. */
  readonly head: JsonRecord;
  /** Key of the rows in JSON. */
  readonly list: string;
  readonly columns: readonly Column[];
  readonly cells: (some: Some) => readonly (readonly Cell[])[];
  /** The rows as JSON lists them. */
  readonly records: (some: Some) => readonly object[];
  /** The rows as lines of NDJSON, each complete without the others. */
  readonly lines: (some: Some) => readonly object[];
  /** What JSON lists after the rows, one record of each `Some`. */
  readonly also?: { readonly list: string; readonly record: (some: Some) => object };
}
