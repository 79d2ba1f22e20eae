import { dilutionPattern } from "../../core/quantity/pattern/dilution-pattern.js";
import { quantityPattern } from "../../core/quantity/pattern/quantity-pattern.js";
import type { KeySchema } from "./key-schema.js";

const powder = quantityPattern("massPerVolume");
const dilutions = [`^(?!${powder}$)${dilutionPattern()}$`, `^${powder}$`];

/** The texts of a key that a liquid has in one kind and a powder in another: those of one of the two. */
function textsOf(key: KeySchema, of: number): KeySchema | undefined {
  const text = [key, ...(key.anyOf ?? [])].find(
    ({ reads }) => typeof reads === "object" && reads.length === 2,
  );
  const form = typeof text?.reads === "object" ? text.reads[of] : undefined;
  if (text === undefined || form === undefined) return undefined;
  const { errorMessage } = text;
  return {
    pattern: `^${quantityPattern(form.kind, form.limits)}$`,
    errorMessage,
    patternErrorMessage: errorMessage,
  };
}

/** Of a dye, what its dilution asks of other keys: a liquid is bought by volume, a powder by mass. */
export const byDilution = (properties: Readonly<Record<string, KeySchema>>): readonly KeySchema[] =>
  dilutions.map((pattern, of) => ({
    if: { required: ["dilution"], properties: { dilution: { type: "string", pattern } } },
    // biome-ignore lint/suspicious/noThenProperty: a word of JSON Schema
    then: {
      properties: Object.fromEntries(
        Object.entries(properties).flatMap(([name, key]) => {
          const texts = textsOf(key, of);
          return texts === undefined ? [] : [[name, texts]];
        }),
      ),
    },
  }));
