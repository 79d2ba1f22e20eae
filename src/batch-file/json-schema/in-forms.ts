import type { Forms } from "../schema/one-of-forms.js";
import type { KeySchema } from "./key-schema.js";

/** A map in its possible forms, so that an editor offers only the keys of one form together. */
export function inForms(map: KeySchema, forms: Forms): KeySchema {
  const choosable = new Set(forms.flatMap(({ keys = [] }) => keys));
  if (choosable.size === 0) return { ...map, anyOf: forms.map(({ needs }) => ({ required: needs })) };
  const { type, properties = {}, required = [], additionalProperties, ...outer } = map;
  const exclusive = forms.every(({ needs }) => needs.length > 0);
  return {
    ...outer,
    [exclusive ? "oneOf" : "anyOf"]: forms.map(({ needs, keys = [] }) => ({
      type,
      properties: Object.fromEntries(
        Object.entries(properties).filter(([key]) => !choosable.has(key) || keys.includes(key)),
      ),
      required: [...new Set([...required, ...needs])],
      additionalProperties,
    })),
  };
}
