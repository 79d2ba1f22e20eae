import type { MeshUnit } from "../../core/part/units.js";

/** Units of a model, by the words for them. */
const modelUnits = {
  mm: "mm",
  cm: "cm",
  m: "m",
  micron: "micron",
  inch: "inch",
  in: "inch",
  foot: "foot",
  ft: "foot",
} as const satisfies Readonly<Record<string, MeshUnit>>;

/** The words for them. */
export const modelUnitNames: readonly string[] = Object.keys(modelUnits);

/** The unit that a word names. */
export const modelUnit = (name: string): MeshUnit | undefined =>
  Object.hasOwn(modelUnits, name) ? modelUnits[name as keyof typeof modelUnits] : undefined;
