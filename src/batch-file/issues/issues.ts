import type { core, ZodType } from "zod";
import { error } from "../../core/fault.js";
import { listed } from "../../core/quantity/text/listed.js";
import { notA, type Told } from "../schema/leaf.js";
import type { Path } from "../source/source.js";
import { formOf, keyToAdd, mapExample, shown, valueAt } from "./issue-words.js";
import { nearest } from "./nearest.js";
import type { PartFault } from "./part-fault.js";
import { schemaAt } from "./schema-at.js";
import { unknownKeys } from "./unknown-keys.js";

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
  if (issue.code === "unrecognized_keys") return unknownKeys(issue, path, schema, valueAt(data, path));
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
              ? `add ${keyToAdd(schema, path, data)} at the top of the file`
              : `add ${keyToAdd(schema, path, data)}`,
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
            ? `${value} is not a value of ${path.findLast((step) => typeof step === "string")}`
            : notA(`one of ${listed(values)}`, value),
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
          notA(wanted[issue.expected] ?? `a ${issue.expected}`, value),
          value === null ? "write what belongs here, or remove the key" : formOf(schema, path),
        ),
        part: value === null ? "key" : "value",
      },
    ];
  return [{ fault: error("value", path, issue.message), part: "value" }];
}
