import type { core, ZodType } from "zod";
import { error, type Fault } from "../core/fault.js";
import { listed, nearest } from "./nearest.js";
import { type Told, thing } from "./schema/leaf.js";
import type { Part, Path } from "./source.js";

/** A fault, and whether it lies with the key or with the value. */
export interface PartFault {
  readonly fault: Fault;
  readonly part: Part;
}

type Schema = ZodType & { readonly _zod: { readonly def: Definition } };
interface Definition {
  readonly type: string;
  readonly shape?: Record<string, Schema>;
  readonly valueType?: Schema;
  readonly element?: Schema;
  readonly innerType?: Schema;
  readonly in?: Schema;
  readonly options?: readonly Schema[];
}

/** The part of the schema that a path leads to; wrappers are taken off. */
export function schemaAt(schema: ZodType, path: Path): Schema | undefined {
  let here: Schema | undefined = schema as Schema;
  const bare = (found: Schema | undefined): Schema | undefined => {
    let inner = found;
    while (inner?._zod.def.innerType !== undefined) inner = inner._zod.def.innerType;
    if (inner?._zod.def.type === "pipe") return inner._zod.def.in;
    if (inner?._zod.def.type === "union")
      return (
        inner._zod.def.options
          ?.map(bare)
          .find((o) => o?._zod.def.shape !== undefined || o?._zod.def.valueType !== undefined) ?? inner
      );
    return inner;
  };
  here = bare(here);
  for (const step of path) {
    const def: Definition | undefined = here?._zod.def;
    here = bare(def?.shape?.[String(step)] ?? def?.valueType ?? def?.element);
  }
  return here;
}

const valueAt = (data: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (at, step) => (at as Record<string | number, unknown> | null | undefined)?.[step],
    data,
  );

/** "tanks.six", "item 1 of baths", "start in item 1 of baths". */
function shown(path: Path): string {
  const at = path.findLastIndex((step) => typeof step === "number");
  if (at < 0) return path.join(".");
  const item = `item ${Number(path[at]) + 1} of ${shown(path.slice(0, at))}`;
  return at === path.length - 1 ? item : `${path.slice(at + 1).join(".")} in ${item}`;
}

/** Keys that stand for a name, and where such names are defined. */
const references: { readonly [key: string]: string } = {
  tank: "tanks",
  dye: "dyes",
  part: "parts",
  shade: "shades",
};

/** "  volume: 6 L" for a key, from its own example. */
function exampleOf(schema: ZodType, path: Path, data: unknown): string {
  const kind = references[String(path.at(-1))];
  const names = kind === undefined ? [] : Object.keys(valueAt(data, [kind]) ?? {});
  if (names.length === 1) return `${path.at(-1)}: ${names[0]}`;
  if (names.length > 0 && names.length <= 8) return `${path.at(-1)}: with one of the names ${listed(names)}`;
  if (kind !== undefined) return `${path.at(-1)}: with a name that is defined under ${kind}`;
  const meaning = schemaAt(schema, path)?.meta() as { examples?: readonly unknown[] } | undefined;
  const example = meaning?.examples?.[0];
  const key = String(path.at(-1));
  return example === undefined
    ? `${key}:`
    : `${key}: ${typeof example === "string" ? example : JSON.stringify(example)}`;
}

function unknownKeys(
  issue: core.$ZodIssueUnrecognizedKeys,
  path: Path,
  schema: ZodType,
  data: unknown,
): PartFault[] {
  const known = Object.keys(schemaAt(schema, path)?._zod.def.shape ?? {});
  const there = valueAt(data, path) as Record<string, unknown>;
  return issue.keys.map((key) => {
    const at = [...path, key];
    const keys = Object.keys(there);
    const before = keys[keys.indexOf(key) - 1];
    const tell = (code: string, message: string, help: string): PartFault => ({
      fault: error(code, at, message, help),
      part: "key",
    });
    // { volume: 6,5 L } is a volume of 6 and a key "5 L".
    if (/^\d/.test(key) && there[key] === null && before !== undefined && typeof there[before] === "number")
      return tell(
        "decimal-comma",
        "a comma stands in the number",
        `the decimal mark is a point: write ${before}: ${there[before]}.${key}`,
      );
    const near = nearest(key, known);
    return tell(
      "unknown-key",
      `${path.length === 0 ? "a batch" : shown(path)} has no key ${key}`,
      key === "<<"
        ? "merging maps with << is no part of YAML 1.2: write the keys out"
        : near === undefined
          ? `known here: ${listed(known, "and")}`
          : `did you mean ${near}?`,
    );
  });
}

const wanted: { readonly [type: string]: string } = {
  object: "a map of keys",
  record: "a map of names",
  array: "a list",
  string: "a text",
};

/** Faults from what zod found, in the words of this tool. */
export function issueFaults(
  issue: core.$ZodIssue,
  data: unknown,
  schema: ZodType,
  above: Path = [],
): PartFault[] {
  const path = [...above, ...(issue.path as (string | number)[])];
  if (issue.code === "unrecognized_keys") return unknownKeys(issue, path, schema, data);
  if (issue.code === "invalid_union") {
    const branches = issue.errors;
    const best = branches.find((issues) =>
      issues.every((i) => i.path.length > 0 || i.code === "unrecognized_keys"),
    );
    const faults = (best ?? branches[0] ?? []).flatMap((inner) => issueFaults(inner, data, schema, path));
    const map = schemaAt(schema, path)?._zod.def.shape;
    if (best !== undefined || map === undefined) return faults;
    return faults.map(({ fault, part }) => ({
      fault: { ...fault, help: `${fault.help}, or ${mapExample(schema, path)}` },
      part,
    }));
  }
  if (issue.code === "custom") {
    const told = issue.params as Told | undefined;
    if (told?.code === "missing-key" && issue.message === "missing") {
      const owner = path.slice(0, -1);
      return [
        {
          fault: error(
            "missing-key",
            path,
            owner.length === 0 ? "the batch has no name" : `${shown(owner)} has no ${path.at(-1)}`,
            owner.length === 0
              ? `add ${exampleOf(schema, path, data)} at the top of the file`
              : `add ${exampleOf(schema, path, data)}`,
          ),
          part: "key",
        },
      ];
    }
    return [
      { fault: error(told?.code ?? "value", path, issue.message, told?.help), part: told?.part ?? "value" },
    ];
  }
  const value = valueAt(data, path);
  if (issue.code === "invalid_value") {
    const values = issue.values.map(String);
    const near = typeof value === "string" ? nearest(value, values) : undefined;
    return [
      {
        fault: error(
          "unknown-word",
          path,
          typeof value === "string" || typeof value === "number"
            ? `${value} is none of the words that ${shown(path.filter((s) => typeof s === "string"))
                .split(".")
                .at(-1)} takes`
            : `one of ${listed(values)} is wanted, ${thing(value)} is given`,
          near === undefined ? `write ${listed(values)}` : `did you mean ${near}? It takes ${listed(values)}`,
        ),
        part: "value",
      },
    ];
  }
  if (issue.code === "invalid_type")
    return [
      {
        fault: error(
          "wrong-type",
          path,
          `${wanted[issue.expected] ?? `a ${issue.expected}`} is wanted, ${thing(value)} is given`,
          value === null ? "write what belongs here, or remove the key" : helpFor(schema, path),
        ),
        part: value === null ? "key" : "value",
      },
    ];
  return [{ fault: error("value", path, issue.message), part: "value" }];
}

/** What a map or list looks like. */
function helpFor(schema: ZodType, path: Path): string {
  const def = schemaAt(schema, path)?._zod.def;
  const last = String(path.at(-1) ?? "batch");
  if (def?.element !== undefined) {
    const keys = Object.keys(def.element._zod.def.shape ?? {});
    return `begin each item with a dash and a space: - ${keys[0] ?? "item"}: ...`;
  }
  if (def?.valueType !== undefined)
    return `write ${last}: and below it, indented and without a dash, names with their own keys`;
  const keys = Object.keys(def?.shape ?? {});
  return keys.length > 3
    ? `it takes the keys ${listed(keys, "and")}`
    : `write ${last}: ${mapExample(schema, path)}`;
}

/** A map with an example behind each of its keys. */
function mapExample(schema: ZodType, path: Path): string {
  const keys = Object.keys(schemaAt(schema, path)?._zod.def.shape ?? {});
  const entries = keys.map((key) => {
    const meaning = schemaAt(schema, [...path, key])?.meta() as { examples?: readonly unknown[] } | undefined;
    return `${key}: ${String(meaning?.examples?.[0] ?? "...")}`;
  });
  return `{ ${entries.join(", ")} }`;
}

const joined = (path: Path): string => path.join("\n");

/**
 * Without what only follows from another fault: a key that is missing because it is misspelt, a unit that
 * is missing because a decimal comma has cut it off.
 */
export function withoutEchoes(faults: readonly PartFault[]): PartFault[] {
  const told = new Set<string>();
  for (const { fault } of faults) {
    const owner = fault.path.slice(0, -1);
    const meant = /^did you mean (.*)\?$/.exec(fault.help ?? "")?.[1];
    if (fault.code === "unknown-key" && meant !== undefined)
      told.add(joined([...owner, meant, "missing-key"]));
    const cut = /write (\w+): /.exec(fault.help ?? "")?.[1];
    if (fault.code === "decimal-comma" && cut !== undefined)
      told.add(joined([...owner, cut, "unit-missing"]));
  }
  return faults.filter(({ fault }) => !told.has(joined([...fault.path, fault.code])));
}
