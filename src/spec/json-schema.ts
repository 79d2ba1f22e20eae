import * as z from "zod";
import { batchSchema } from "./schema/batch.js";

type Node = Record<string, unknown>;

/** Whether a default can be typed into a file as it stands: one word, a number, a number with its unit. */
const isWritten = (value: unknown): boolean =>
  typeof value !== "string" || /^\S+$/.test(value) || /^\d[\d.]* \S+$/.test(value);

/** A default that is a rule ("1.15 x volume") goes into the description: an editor would type it in. */
function explainDefault(node: Node): void {
  if (!("default" in node) || isWritten(node.default)) return;
  node.description = [node.description, `default: ${node.default}`].filter(Boolean).join("; ");
  delete node.default;
}

/**
 * JSON Schema (2020-12) of a batch file, for editors. It knows keys, types and choices; quantities and names
 * are checked by `check`. Nothing is required at the top, so that included files pass as well.
 */
export function batchJsonSchema(): Node {
  const {
    $schema,
    required: _,
    ...rest
  } = z.toJSONSchema(batchSchema(), {
    io: "input",
    unrepresentable: "any",
    override: ({ jsonSchema }) => explainDefault(jsonSchema as Node),
  }) as Node;
  return { $schema, title: "dipwright batch file", ...rest };
}
