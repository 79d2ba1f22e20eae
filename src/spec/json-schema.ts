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

/** JSON Schema of a batch file, for editors: what each key means, its default, examples, and the words it takes. */
export function batchJsonSchema(): JsonSchema {
  const schema = z.toJSONSchema(batchSchema(), { io: "input", unrepresentable: "any" }) as JsonSchema;
  // An included file has no name of its own, so an editor must not ask for one.
  const { required: _, ...rest } = schema;
  return { ...rest, title: "dipwright batch file" };
}
