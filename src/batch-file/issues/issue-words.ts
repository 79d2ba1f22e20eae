import type { ZodType } from "zod";
import { listed } from "../../core/quantity/text/listed.js";
import { mostListed, namedMapKeys, namedMaps } from "../schema/named-maps.js";
import type { Path } from "../source/source.js";
import { exampleAt, exampleKeys, schemaAt } from "./schema-at.js";

/** The part of some data that a path leads to. */
export const valueAt = (data: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (at, step) => (at as Record<string | number, unknown> | null | undefined)?.[step],
    data,
  );

/** "tanks.six", "item 1 of baths", "start in item 1 of baths". */
export function shown(path: Path): string {
  const at = path.findLastIndex((step) => typeof step === "number");
  if (at < 0) return path.join(".");
  const item = `item ${Number(path[at]) + 1} of ${shown(path.slice(0, at))}`;
  return at === path.length - 1 ? item : `${path.slice(at + 1).join(".")} in ${item}`;
}

/** A missing key with an example, or with the names that it can take: "volume: 6 L". */
export function keyToAdd(schema: ZodType, path: Path, data: unknown): string {
  const kind = namedMapKeys.find((map) => namedMaps[map] === path.at(-1));
  const names = kind === undefined ? [] : Object.keys(valueAt(data, [kind]) ?? {});
  if (names.length === 1) return `${path.at(-1)}: ${names[0]}`;
  if (names.length > 0 && names.length <= mostListed)
    return `${path.at(-1)}: with one of the names ${listed(names)}`;
  if (kind !== undefined) return `${path.at(-1)}: with a name that is defined under ${kind}`;
  const example = exampleAt(schema, path);
  const key = String(path.at(-1));
  return example === undefined
    ? `${key}:`
    : `${key}: ${typeof example === "string" ? example : JSON.stringify(example)}`;
}

/** A map of more keys than this is described by their names, since an example would be too long. Common practice, no source. */
const mostInExample = 3;

/** What a map or list looks like. */
export function formOf(schema: ZodType, path: Path): string {
  const def = schemaAt(schema, path)?._zod.def;
  const last = String(path.at(-1) ?? "batch");
  if (def?.element !== undefined) {
    const keys = Object.keys(def.element._zod.def.shape ?? {});
    return `begin each item with a dash and a space: - ${keys[0] ?? "item"}: ...`;
  }
  if (def?.valueType !== undefined)
    return `write ${last}: and below it, indented and without a dash, names with their own keys`;
  const keys = Object.keys(def?.shape ?? {});
  return keys.length > mostInExample
    ? `it takes the keys ${listed(keys, "and")}`
    : `write ${last}: ${mapExample(schema, path)}`;
}

/** A map with an example behind each key that its first form has. */
export function mapExample(schema: ZodType, path: Path): string {
  const entries = exampleKeys(schema, path).map(
    (key) => `${key}: ${String(exampleAt(schema, [...path, key]) ?? "...")}`,
  );
  return `{ ${entries.join(", ")} }`;
}
