import { mapped } from "../../core/mapped.js";
import { jsonLine } from "./json.js";
import type { RowFormat } from "./row-format.js";

/** Records as lines of JSON, numbers unrounded: a script can read them as they come. */
export const ndjson = (name: string, records: readonly object[]): string =>
  mapped(records, (record) => `${jsonLine(name, record)}\n`).join("");

export const ndjsonRows: RowFormat = {
  headed: false,
  besideRows: false,
  open: ({ name, lines }) => ({
    head: () => "",
    rows: (some) => ndjson(name, lines(some)),
    tail: () => [],
  }),
};
