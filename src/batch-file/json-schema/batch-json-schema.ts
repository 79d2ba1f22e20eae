import { byDilution } from "./by-dilution.js";
import { inForms } from "./in-forms.js";
import type { JsonSchema } from "./json-schema.js";
import { batchKeySchema, defaultOf, type KeySchema } from "./key-schema.js";
import { snippetOf } from "./snippet-of.js";
import { textDefinitions } from "./text-definitions.js";

/** A name that is defined in the batch: no white space around it, no control characters. */
const definedName = {
  type: "string",
  pattern: "^(?!\\s)[^\\u0000-\\u001f\\u007f-\\u009f]+(?<!\\s)$",
  patternErrorMessage: "write a name without white space around it",
};

/** The description with the default: editors show only the description. */
function described(node: KeySchema): Pick<JsonSchema, "description"> {
  const fallback = defaultOf(node);
  return node.description === undefined || fallback === undefined
    ? {}
    : { description: `${node.description}; default: ${fallback}` };
}

/** A node in the form that editors read. */
function forEditors(node: KeySchema, refer: ReturnType<typeof textDefinitions>["refer"]): KeySchema {
  const {
    otherwise: _otherwise,
    snippet: _snippet,
    placeholder: _placeholder,
    reads,
    forms,
    examples,
    items,
    ...rest
  } = node;
  const snippet = snippetOf(node);
  const made: KeySchema = {
    ...rest,
    ...described(node),
    // Beside items or examples, an editor would insert those in place of the template.
    ...(snippet === undefined
      ? { ...(examples && { examples }), ...(items && { items }) }
      : { defaultSnippets: [snippet], ...(items && { allOf: [{ items }] }) }),
    ...(typeof node.additionalProperties === "object" ? { propertyNames: definedName } : {}),
  };
  if (node.properties?.dilution !== undefined && node.required?.includes("dilution")) return byDilution(made);
  if (reads !== undefined) return refer({ ...made, reads });
  if (forms !== undefined) return inForms(made, forms);
  return made.pattern === undefined ? made : { ...made, patternErrorMessage: made.errorMessage };
}

/** Changes every node of a schema, parents first. */
function eachNode(node: KeySchema, change: (node: KeySchema) => KeySchema): KeySchema {
  const below = (child: KeySchema): KeySchema => eachNode(child, change);
  const changed = change(node);
  const { properties, additionalProperties: others, items, anyOf, oneOf } = changed;
  return {
    ...changed,
    ...(properties && {
      properties: Object.fromEntries(Object.entries(properties).map(([key, of]) => [key, below(of)])),
    }),
    ...(typeof others === "object" && { additionalProperties: below(others) }),
    ...(items && { items: below(items) }),
    ...(anyOf && { anyOf: anyOf.map(below) }),
    ...(oneOf && { oneOf: oneOf.map(below) }),
  };
}

/**
 * JSON Schema (2020-12) of a batch file, for editors: the meaning of each key, its default, examples, words and
 * patterns. Editors also read two extensions: what to write instead (`errorMessage`, `patternErrorMessage`) and templates
 * (`defaultSnippets`). The name of the batch is not required, as an included file has none.
 */
export function batchJsonSchema(): JsonSchema {
  const { required: _, ...schema } = batchKeySchema();
  const { made, refer } = textDefinitions();
  const keys = eachNode(schema, (node) => forEditors(node, refer));
  return { ...keys, $defs: Object.fromEntries(made) };
}
