import * as z from "zod";
import { batchSchema } from "./schema/batch.js";

/** A node of a JSON Schema, as far as this tool looks into one. */
export interface JsonSchema {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly default?: unknown;
  /** What holds without the key, in words; ours, not JSON Schema's. */
  readonly otherwise?: string;
  readonly examples?: readonly unknown[];
  readonly enum?: readonly unknown[];
  readonly properties?: { readonly [key: string]: JsonSchema };
  readonly required?: readonly string[];
  readonly additionalProperties?: JsonSchema | boolean;
  readonly items?: JsonSchema;
  readonly anyOf?: readonly JsonSchema[];
  readonly [rule: string]: unknown;
}

/** What holds without the key, as written or in words; of a value in several forms, what one of them says. */
export const defaultOf = (node: JsonSchema): unknown =>
  node.default ?? node.otherwise ?? node.anyOf?.map(defaultOf).find((value) => value !== undefined);

/** The keys of a batch file as the zod schema has them. */
export function batchKeySchema(): JsonSchema {
  const schema = z.toJSONSchema(batchSchema(), { io: "input", unrepresentable: "any" }) as JsonSchema;
  // An included file has no name of its own, so an editor must not ask for one.
  const { $schema, required: _, ...rest } = schema;
  return { $schema, title: "dipwright batch file", ...rest };
}

/** A node as editors take it: what holds without the key is said where they show what the key means. */
function forEditors(node: JsonSchema): JsonSchema {
  const { otherwise, ...rest } = node;
  const fallback = defaultOf(node);
  return {
    ...rest,
    ...(node.description === undefined || fallback === undefined
      ? {}
      : { description: `${node.description}; default: ${fallback}` }),
  };
}

/** Every node of a schema changed, those above first. */
function eachNode(node: JsonSchema, change: (node: JsonSchema) => JsonSchema): JsonSchema {
  const below = (child: JsonSchema): JsonSchema => eachNode(child, change);
  const changed = change(node);
  const { properties, additionalProperties: others, items, anyOf } = changed;
  return {
    ...changed,
    ...(properties && {
      properties: Object.fromEntries(Object.entries(properties).map(([key, of]) => [key, below(of)])),
    }),
    ...(typeof others === "object" && { additionalProperties: below(others) }),
    ...(items && { items: below(items) }),
    ...(anyOf && { anyOf: anyOf.map(below) }),
  };
}

/** JSON Schema (2020-12) of a batch file, for editors: what each key means, its default, examples, and the words it takes. */
export const batchJsonSchema = (): JsonSchema => eachNode(batchKeySchema(), forEditors);
