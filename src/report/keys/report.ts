import type { Report } from "../report.js";
import type { Column } from "../table.js";

/** A key of the batch file. */
export interface ReportedKey {
  readonly path: string;
  readonly meaning: string;
  readonly default: string;
  readonly example: string;
  readonly required: boolean;
}

const column = (key: string): Column => ({ key, title: key, align: "left" });

/** Keys of the batch file, a row each. */
export function keysReport(keys: readonly ReportedKey[]): Report {
  const columns = ["key", "meaning", "default", "example"].map(column);
  return {
    name: "keys",
    data: { keys },
    rows: {
      columns: [...columns, column("required")],
      rows: keys.map((key) => [key.path, key.meaning, key.default, key.example, key.required ? "yes" : "no"]),
    },
    blocks: [
      { kind: "heading", level: 1, text: "Keys of the batch file" },
      {
        kind: "paragraph",
        text: "NAME is a name of your own, MIX that of a mixed bath, ITEM an item of a list. A key that is not required can be left out.",
      },
      {
        kind: "table",
        table: {
          columns,
          rows: keys.map((key) => [
            key.path,
            key.meaning,
            key.required ? "required" : key.default,
            key.example,
          ]),
        },
      },
    ],
  };
}
