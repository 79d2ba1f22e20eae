import * as z from "zod";
import { batchSchema } from "./schema/batch.js";

/** A node of a JSON Schema, as far as this tool looks into one. */
export interface JsonSchema {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly default?: unknown;
  readonly examples?: readonly unknown[];
  readonly enum?: readonly unknown[];
  readonly properties?: { readonly [key: string]: JsonSchema };
  readonly required?: readonly string[];
  readonly additionalProperties?: JsonSchema | boolean;
  readonly items?: JsonSchema;
  readonly anyOf?: readonly JsonSchema[];
  readonly [rule: string]: unknown;
}

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

const toJson = (override: (node: Node) => void): JsonSchema => {
  const schema = z.toJSONSchema(batchSchema(), {
    io: "input",
    unrepresentable: "any",
    override: ({ jsonSchema }) => override(jsonSchema as Node),
  }) as JsonSchema;
  // An included file has no name of its own, so an editor must not ask for one.
  const { $schema, required: _, ...rest } = schema;
  return { $schema, title: "dipwright batch file", ...rest };
};

/** JSON Schema (2020-12) of a batch file, for editors: what each key means, its default, examples, and the words it takes. */
export const batchJsonSchema = (): JsonSchema => toJson(explainDefault);

/** The same with every default where the zod schema has it, rules included: what the table of keys is made of. */
export const batchKeySchema = (): JsonSchema => toJson(() => {});
