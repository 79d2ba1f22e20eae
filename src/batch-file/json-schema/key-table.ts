import { listed } from "../../core/quantity/text/listed.js";
import { batchKeySchema, defaultOf, type KeySchema } from "./key-schema.js";

/** One key of the batch file. */
export interface KeyRow {
  /** "tanks.NAME.volume", "orders.ITEM.part" */
  readonly path: string;
  readonly meaning: string;
  /** As written, or in words; empty if there is none. */
  readonly default: string;
  readonly example: string;
  /** Whether its map needs it. */
  readonly required: boolean;
}

const written = (value: unknown): string =>
  value === undefined ? "" : Array.isArray(value) ? `[${value.map(written).join(", ")}]` : String(value);

/** The description of a key, with its words unless they are already in it. */
function meaningOf({ description = "", enum: words = [] }: KeySchema): string {
  const names = words.map(String);
  return names.every((word) => description.includes(word)) ? description : `${description}: ${listed(names)}`;
}

function walk(node: KeySchema, path: string, required: boolean, rows: KeyRow[]): void {
  if (path !== "")
    rows.push({
      path,
      meaning: meaningOf(node),
      default: written(defaultOf(node)),
      example: written(node.examples?.[0] ?? node.enum?.at(-1) ?? node.anyOf?.[0]?.examples?.[0]),
      required,
    });
  const under = (step: string): string => (path === "" ? step : `${path}.${step}`);
  const visit = (of: KeySchema): void => {
    for (const [key, child] of Object.entries(of.properties ?? {}))
      walk(child, under(key), of.required?.includes(key) ?? false, rows);
    if (typeof of.additionalProperties === "object") inner(of.additionalProperties, under("NAME"));
    if (of.items !== undefined && of.items.properties !== undefined) inner(of.items, under("ITEM"));
    for (const option of of.anyOf ?? []) visit(option);
  };
  const inner = (of: KeySchema, at: string): void => {
    if (of.anyOf?.some(({ placeholder }) => placeholder !== undefined))
      for (const option of of.anyOf)
        inner(option, option.placeholder === undefined ? at : under(option.placeholder));
    else if (of.properties === undefined) walk(of, at, false, rows);
    else
      for (const [key, child] of Object.entries(of.properties))
        walk(child, `${at}.${key}`, of.required?.includes(key) ?? false, rows);
  };
  visit(node);
}

/** Every key of the batch file with its meaning, in the order of the schema. */
export function keyTable(): readonly KeyRow[] {
  const rows: KeyRow[] = [];
  walk(batchKeySchema(), "", false, rows);
  return rows.map((row) => (row.path === "batch" ? { ...row, required: true } : row));
}
