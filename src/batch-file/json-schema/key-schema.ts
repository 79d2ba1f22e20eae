import * as z from "zod";
import { batchSchema } from "../schema/batch.js";
import type { Snippet, TextForm } from "../schema/leaf.js";
import type { Forms } from "../schema/one-of-forms.js";
import type { JsonSchema } from "./json-schema.js";

/** A node with what the zod schema says about a key and JSON Schema cannot express. */
export interface KeySchema extends JsonSchema {
  readonly properties?: { readonly [key: string]: KeySchema };
  readonly additionalProperties?: KeySchema | boolean;
  readonly items?: KeySchema;
  readonly anyOf?: readonly KeySchema[];
  /** The default, in words. */
  readonly otherwise?: string;
  readonly reads?: TextForm;
  readonly snippet?: Snippet;
  readonly forms?: Forms;
  /** For the name in the table of keys, where a map of names holds maps of several forms. */
  readonly placeholder?: string;
}

/** The default, as written or in words; for a value in several forms, that of the first form with one. */
export const defaultOf = (node: KeySchema): unknown =>
  node.default ?? node.otherwise ?? node.anyOf?.map(defaultOf).find((value) => value !== undefined);

/** The keys of a batch file as the zod schema has them. */
export function batchKeySchema(): KeySchema {
  const schema = z.toJSONSchema(batchSchema(), { io: "input", unrepresentable: "any" }) as KeySchema;
  const { $schema, properties, ...rest } = schema;
  return {
    $schema,
    title: "dipwright batch file",
    ...rest,
    properties: {
      ...properties,
      $schema: {
        type: "string",
        description: "in a JSON file: the JSON Schema that an editor checks it against; otherwise ignored",
        examples: ["./batch.schema.json"],
      },
    },
  };
}
