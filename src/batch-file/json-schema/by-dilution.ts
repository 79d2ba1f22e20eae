import { dilutionPattern } from "../../core/quantity/pattern/dilution-pattern.js";
import { quantityPattern } from "../../core/quantity/pattern/quantity-pattern.js";
import type { KeySchema } from "./key-schema.js";

const powder = quantityPattern("massPerVolume");
const dilutions = [`^(?!${powder}$)${dilutionPattern()}$`, `^${powder}$`];

/** The form of a key that reads one kind of text for a liquid and another for a powder. */
const textOf = (key: KeySchema): KeySchema | undefined =>
  [key, ...(key.anyOf ?? [])].find(({ reads }) => typeof reads === "object" && reads.length === 2);

/** The rule of a key for a liquid (`of` = 0) or a powder (1). */
function ruleOf(key: KeySchema, of: number): KeySchema | undefined {
  const text = textOf(key);
  const form = typeof text?.reads === "object" ? text.reads[of] : undefined;
  if (text === undefined || form === undefined) return undefined;
  const { errorMessage, examples = [] } = text;
  return {
    type: text === key ? "string" : ["string", "object"],
    pattern: `^${quantityPattern(form.kind, form.limits)}$`,
    errorMessage,
    patternErrorMessage: errorMessage,
    examples: examples.slice(of, of + 1),
  };
}

/** A key without the examples of its texts, which mix liquids and powders. */
function withoutExamples(key: KeySchema): KeySchema {
  const text = textOf(key);
  if (text === undefined) return key;
  const { examples: _, ...others } = text;
  return text === key ? others : { ...key, anyOf: key.anyOf!.map((one) => (one === text ? others : one)) };
}

const eachKey = <T>(keys: Readonly<Record<string, KeySchema>>, make: (key: KeySchema) => T | undefined) =>
  Object.fromEntries(
    Object.entries(keys).flatMap(([name, key]) => {
      const made = make(key);
      return made === undefined ? [] : [[name, made]];
    }),
  );

/** Rules for the other keys of a dye by its dilution: a liquid is bought by volume, a powder by mass. */
export const byDilution = ({ properties = {}, ...dye }: KeySchema): KeySchema => ({
  ...dye,
  properties: eachKey(properties, withoutExamples),
  allOf: dilutions.map((pattern, of) => ({
    if: { required: ["dilution"], properties: { dilution: { type: "string", pattern } } },
    // biome-ignore lint/suspicious/noThenProperty: a word of JSON Schema
    then: { properties: eachKey(properties, (key) => ruleOf(key, of)) },
  })),
});
