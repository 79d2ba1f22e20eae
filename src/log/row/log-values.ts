import type { ColumnName, logColumns } from "./columns.js";
import type { LocalTime } from "./local-time.js";

type OfKind<Kind extends string> = {
  [Name in ColumnName]: (typeof logColumns)[Name]["kind"] extends Kind ? Name : never;
}[ColumnName];

export type TextColumn = OfKind<"text">;
export type NumericColumn = OfKind<"number">;

/** The cells of a row that are filled in, each of its own kind. */
export type LogValues = { readonly time?: LocalTime } & {
  readonly [Name in TextColumn]?: string;
} & { readonly [Name in NumericColumn]?: number };
