import * as z from "zod";
import type { PartlyRead } from "../checks/report.js";
import { isMap } from "../source/is-map.js";
import { batchSchema, type RawSpec } from "./batch.js";
import { isNamedMap } from "./named-maps.js";

type Data = Readonly<Record<string, unknown>>;

/** Data without a fault, and the values read from them. */
export interface ReadData {
  readonly data: Data;
  readonly raw: RawSpec;
}

/** The values read from a batch, undefined where they have a fault, and the issues. */
interface Sections {
  readonly value: PartlyRead;
  readonly issues: readonly z.core.$ZodIssue[];
}

/**
 * Reads the data of a batch. Lists, maps and named entries that are the same objects as in data read before (`like`) are
 * not read again.
 */
export function readSections(data: Data, like?: ReadData): Sections {
  if (like === undefined) return readAll(data);
  const own: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(data)) {
    const before = like.data[key];
    if (isSame(value, before)) continue;
    own[key] = isNamedMap(key) && isMap(value) && isMap(before) ? without(value, before) : value;
  }
  const { value, issues } = readAll(own);
  return { value: joined(data, value, like), issues };
}

/** Zod's public parsers return no values if there is an issue, but the checks of names need them. */
function readAll(data: Data): Sections {
  // Compiling the schema takes longer than one batch.
  const context = { async: false, jitless: true } as const;
  const read = batchSchema()._zod.run({ value: data, issues: [] }, context);
  if (read instanceof Promise) throw new z.core.$ZodAsyncError();
  const issues = read.issues.map((issue) => z.core.util.finalizeIssue(issue, context, z.core.config()));
  return { value: read.value as PartlyRead, issues };
}

const isSame = (value: unknown, before: unknown): boolean =>
  typeof value === "object" && value !== null && value === before;

function without(entries: Data, before: Data): Data {
  const others: Record<string, unknown> = {};
  for (const name of Object.keys(entries))
    if (!isSame(entries[name], before[name])) others[name] = entries[name];
  return others;
}

/** The values read now and before, in the order of the schema. */
function joined(data: Data, now: PartlyRead, { data: before, raw }: ReadData): PartlyRead {
  const [read, known] = [now as Data, raw as Data];
  const all: Record<string, unknown> = {};
  for (const key of Object.keys(batchSchema().shape)) {
    const [value, old, entries] = [data[key], before[key], read[key]];
    if (isSame(value, old)) all[key] = known[key];
    else if (isNamedMap(key) && isMap(value) && isMap(old) && isMap(entries))
      all[key] = joinedEntries(value, old, entries, known[key] as Data);
    else if (Object.hasOwn(read, key)) all[key] = entries;
  }
  return all as PartlyRead;
}

function joinedEntries(data: Data, before: Data, read: Data, known: Data): Data {
  const all: Record<string, unknown> = {};
  for (const name of Object.keys(data))
    if (isSame(data[name], before[name])) all[name] = known[name];
    else if (Object.hasOwn(read, name)) all[name] = read[name];
  return all;
}
