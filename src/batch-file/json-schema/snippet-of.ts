import type { KeySchema } from "./key-schema.js";

/** A template for editors: `${1:6 L}` is a place to fill in, and editors insert a text that begins with `^` as it is. */
export interface EditorSnippet {
  readonly label: string;
  readonly description: string;
  /** Without it some editors insert the text as the first item of a list. */
  readonly type?: "string";
  readonly body: unknown;
}

const place = (value: unknown, number: number): string => `\${${number}:${value}}`;

/** One value that is valid in both YAML and JSON: a list in brackets, a text in quotes. */
const valueText = (value: unknown): string =>
  Array.isArray(value)
    ? `^[${value.map((one, i) => place(one, i + 1)).join(", ")}]`
    : `^"${place(value, 1)}"`;

/** The template of a value, from its example, or of a map, from the examples of the keys that its first form needs. */
export function snippetOf({
  snippet,
  examples,
  properties,
  required = [],
  forms = [],
}: KeySchema): EditorSnippet | undefined {
  if (snippet === undefined) return undefined;
  if (properties === undefined) return { ...snippet, type: "string", body: valueText(examples?.[0]) };
  const keyText = (key: string, i: number): string => {
    const example = properties[key]?.examples?.[0];
    return `${typeof example === "number" ? "^" : ""}${place(example, i + 1)}`;
  };
  const needed = [...new Set([...required, ...(forms[0]?.needs ?? [])])];
  return { ...snippet, body: Object.fromEntries(needed.map((key, i) => [key, keyText(key, i)])) };
}
