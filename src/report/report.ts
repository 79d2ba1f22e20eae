import type { Plot } from "./plot/plot.js";
import type { Table } from "./table.js";

/** A piece of a report for people, laid out by the text and markdown writers. */
export type Block =
  | { readonly kind: "heading"; readonly level: 1 | 2; readonly text: string }
  | { readonly kind: "paragraph"; readonly text: string }
  | { readonly kind: "list"; readonly items: readonly string[]; readonly ordered?: boolean }
  | { readonly kind: "table"; readonly table: Table }
  | { readonly kind: "code"; readonly lines: readonly string[]; readonly language?: "yaml" | "sh" }
  | { readonly kind: "plot"; readonly plot: Plot };

/**
 * What a command has found out, free of any format: `data` for JSON (unrounded, units in the key names),
 * `rows` for CSV and TSV, `lines` for NDJSON, `blocks` for text, markdown and HTML, `picture` for SVG and HTML.
 */
export interface Report {
  /** Name in the JSON's `schema`: `mix` for `dipwright/mix@1`. */
  readonly name: string;
  readonly data: Readonly<Record<string, unknown>>;
  readonly rows: Table;
  /** A record a line, each complete without the others. */
  readonly lines?: readonly object[];
  readonly blocks: readonly Block[];
  /** One plot, or several below one another. */
  readonly picture?: readonly Plot[];
}

export const paragraph = (text: string): Block => ({ kind: "paragraph", text });

/** A list under a heading of its own; nothing where it is empty. */
export const titledList = (text: string, items: readonly string[]): Block[] =>
  items.length === 0
    ? []
    : [
        { kind: "heading", level: 2, text },
        { kind: "list", items },
      ];
