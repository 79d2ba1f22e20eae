import type { core, ZodType } from "zod";
import { error } from "../core/fault.js";
import { shown, valueAt } from "./issue-words.js";
import { listed, nearest } from "./nearest.js";
import type { PartFault } from "./part-fault.js";
import { keysAt } from "./schema-at.js";
import type { Path } from "./source.js";

/** Keys that the schema does not have, with the nearest one that it has. */
export function unknownKeys(
  issue: core.$ZodIssueUnrecognizedKeys,
  path: Path,
  schema: ZodType,
  data: unknown,
): PartFault[] {
  const known = keysAt(schema, path);
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
