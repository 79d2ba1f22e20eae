import type { core, ZodType } from "zod";
import { error } from "../../core/fault.js";
import { listed } from "../../core/quantity/text/listed.js";
import { isMap } from "../source/is-map.js";
import type { Path } from "../source/source.js";
import { shown } from "./issue-words.js";
import { nearest } from "./nearest.js";
import type { PartFault } from "./part-fault.js";
import { keysAt } from "./schema-at.js";

/** Keys that the schema does not have, with the nearest one that it has. */
export function unknownKeys(
  issue: core.$ZodIssueUnrecognizedKeys,
  path: Path,
  schema: ZodType,
  map: unknown,
): PartFault[] {
  const written = isMap(map) ? Object.keys(map).filter((key) => !issue.keys.includes(key)) : [];
  const known = keysAt(schema, path, written);
  return issue.keys.map((key) => {
    const meant = key === "<<" ? undefined : nearest(key, known);
    return {
      fault: error(
        "unknown-key",
        [...path, key],
        `${path.length === 0 ? "a batch" : shown(path)} has no key ${key}`,
        key === "<<"
          ? "YAML 1.2 cannot merge maps with <<: write the keys out"
          : meant === undefined
            ? `known here: ${listed(known, "and")}`
            : `did you mean ${meant}?`,
      ),
      part: "key",
      ...(meant === undefined ? {} : { meant }),
    };
  });
}
