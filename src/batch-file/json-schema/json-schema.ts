/** A node of a JSON Schema; only the keywords used here are typed. */
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
  readonly oneOf?: readonly JsonSchema[];
  readonly [rule: string]: unknown;
}
