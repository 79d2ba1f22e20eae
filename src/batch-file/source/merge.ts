import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { isMap } from "./is-map.js";
import { locateIn, type Origin } from "./origin.js";
import type { Source } from "./source.js";

type Data = Record<string, unknown>;

/** Data of one or more files, with the place of each value. */
export interface Merged {
  readonly data: Data;
  readonly origin: Origin;
}

/** One file as merged data, without `include`, which is already read, and `$schema`, which is for editors. */
export function asMerged(source: Source): Merged {
  const data = { ...(source.plain as Data) };
  delete data.include;
  delete data.$schema;
  return { data, origin: { source, path: [] } };
}

const at = (origin: Origin, key: string | number): Origin =>
  origin.children?.get(key) ?? { source: origin.source, path: [...origin.path, key] };

/**
 * Joins the data of an included file with the data after it: maps key by key, lists one after the other. A value defined
 * in both is an error that shows both places.
 */
export function merge(first: Merged, second: Merged): { merged: Merged; diagnostics: Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const data: Data = { ...first.data };
  const children = new Map<string | number, Origin>();
  for (const key of Object.keys(first.data)) children.set(key, at(first.origin, key));
  const twice = (path: readonly string[], name: string, maps = false): void => {
    diagnostics.push({
      code: "defined-twice",
      severity: "error",
      message: `${name} is defined in two files`,
      help: `${maps ? "write the keys of both under one of the two" : "keep one of the two"}, or rename one; to try another value use --set`,
      spans: [
        locateIn(second.origin, path, "key"),
        { ...locateIn(first.origin, path, "key"), label: "first defined here" },
      ],
    });
  };
  for (const [key, value] of Object.entries(second.data)) {
    const had = Object.hasOwn(data, key) ? data[key] : undefined;
    const from = at(second.origin, key);
    if (had === undefined || had === null) {
      data[key] = value;
      children.set(key, from);
    } else if (isMap(had) && isMap(value)) {
      const before = children.get(key)!;
      const parts = new Map<string | number, Origin>();
      for (const name of Object.keys(had)) parts.set(name, at(before, name));
      const joined: Data = { ...had };
      for (const [name, entry] of Object.entries(value)) {
        if (Object.hasOwn(joined, name))
          twice([key, name], `${key}.${name}`, isMap(joined[name]) && isMap(entry));
        else {
          joined[name] = entry;
          parts.set(name, at(from, name));
        }
      }
      data[key] = joined;
      children.set(key, { ...from, children: parts });
    } else if (Array.isArray(had) && Array.isArray(value)) {
      const before = children.get(key)!;
      const parts = new Map<string | number, Origin>();
      for (let i = 0; i < had.length; i++) parts.set(i, at(before, i));
      for (let i = 0; i < value.length; i++) parts.set(had.length + i, at(from, i));
      data[key] = [...had, ...value];
      children.set(key, { ...from, children: parts });
    } else if (value !== null) twice([key], key);
  }
  return { merged: { data, origin: { ...second.origin, children } }, diagnostics };
}
