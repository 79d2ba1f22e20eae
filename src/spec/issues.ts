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

const shown = (path: Path): string => path.join(".");

/** "  volume: 6 L" for a key, from its own example. */
function exampleOf(schema: ZodType, path: Path): string {
  const meaning = schemaAt(schema, path)?.meta() as { examples?: readonly unknown[] } | undefined;
  const example = meaning?.examples?.[0];
  const key = String(path.at(-1));
  return example === undefined
    ? `${key}:`
    : `${key}: ${typeof example === "string" ? example : JSON.stringify(example)}`;
}

function unknownKeys(issue: core.$ZodIssueUnrecognizedKeys, path: Path, schema: ZodType): PartFault[] {
  const known = Object.keys(schemaAt(schema, path)?._zod.def.shape ?? {});
  return issue.keys.map((key) => {
    const near = nearest(key, known);
    const where = path.length === 0 ? "a batch" : shown(path);
    return {
      fault: error(
        "unknown-key",
        [...path, key],
        `${where} has no key ${key}`,
        near === undefined ? `known here: ${listed(known, "and")}` : `did you mean ${near}?`,
      ),
      part: "key",
    };
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
  if (issue.code === "unrecognized_keys") return unknownKeys(issue, path, schema);
  if (issue.code === "invalid_union") {
    const branches = issue.errors;
    const best = branches.find((issues) =>
      issues.every((i) => i.path.length > 0 || i.code === "unrecognized_keys"),
    );
    return (best ?? branches[0] ?? []).flatMap((inner) => issueFaults(inner, data, schema, path));
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
            `${owner.length === 0 ? "the batch" : shown(owner)} has no ${path.at(-1)}`,
            `add ${exampleOf(schema, path)}`,
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
    return keys.length === 0
      ? "write items in brackets: [a, b]"
      : `begin each item with a dash: - ${keys[0]}: ...`;
  }
  if (def?.valueType !== undefined)
    return `write names below it, each with its own keys: ${last}:, then name:, then its keys`;
  const keys = Object.keys(def?.shape ?? {});
  return keys.length === 0 ? "see the examples" : `it takes the keys ${listed(keys, "and")}`;
}
