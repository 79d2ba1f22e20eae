import type { RestsOn } from "../../../src/core/model/rests-on.js";

/** Sentences for people: they name the assumption themselves, or no figure of it. */
const inWords = ["warnings", "assumptions", "exceeded", "cautions"];

/** Every number of a plan, or of how baths wear, by its path, with the nearest `restsOnAssumed` around it. */
export function figures(
  value: unknown,
  path = "",
  rests: RestsOn = [],
  found = new Map<string, { value: number; rests: RestsOn }>(),
): Map<string, { value: number; rests: RestsOn }> {
  if (typeof value === "number") found.set(path, { value, rests });
  if (typeof value !== "object" || value === null) return found;
  const own = (value as { restsOnAssumed?: RestsOn }).restsOnAssumed ?? rests;
  for (const [key, child] of Object.entries(value))
    if (!inWords.includes(key)) figures(child, `${path}.${key}`, own, found);
  return found;
}

/** How many figures moved between two results that differ in what is assumed, and which of them are not marked. */
export function passedForKnown(
  a: object,
  b: object,
  what: RestsOn[number],
): { readonly moved: number; readonly unmarked: readonly string[] } {
  const [before, after] = [figures(a), figures(b)];
  const changed = [...before].filter(([path, { value }]) => {
    const other = after.get(path);
    return other === undefined || Math.abs(other.value - value) > 1e-12 * Math.abs(value);
  });
  return {
    moved: changed.length,
    unmarked: changed.filter(([, { rests }]) => !rests.includes(what)).map(([path]) => path),
  };
}
