import { freshSecondsAtStrength, slowing } from "./slowing.js";
import { freshDepth, speedAt, type UptakeModel } from "./uptake-model.js";

/** A bath as a dip meets it: strength while dipping [-], 1 as measured, and temperature [°C]. */
export interface DippedIn {
  readonly strength: number;
  readonly celsius: number;
}

/**
 * Time [s] of a dip in a bath as it is, for the depth that a time gives in a fresh bath at the reference temperature.
 *
 * t = t_fresh m(s) k(T_ref)/k(T) f; m as in `slowing`, f the factor on all times [-]. Any depth has a time at any
 * strength above 0; endless at strength 0.
 * @example
 * dipSeconds({ law: "parabolic", ratePerSecond: 0.01, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, 30, { strength: 0.5, celsius: 80 }) // => 120
 */
export const dipSeconds = (model: UptakeModel, freshSeconds: number, bath: DippedIn): number =>
  dipTimer(model, bath.celsius)(freshSeconds, bath.strength);

/** Time [s] at a strength for the depth that a time gives in a fresh bath. */
export type DipTimer = (freshSeconds: number, strength: number) => number;

/**
 * `dipSeconds` at one temperature [°C], with what does not change worked out once: the life of a bath is ten thousand
 * dips. Strengths are multiplied by `madeUp`.
 */
export function dipTimer(model: UptakeModel, celsius: number, madeUp = 1): DipTimer {
  const factor = (model.timeFactor ?? 1) / speedAt(model, celsius);
  return (freshSeconds, strength) =>
    freshSeconds === 0 ? 0 : freshSeconds * slowing(model, freshSeconds, strength * madeUp) * factor;
}

/**
 * The time [s] in a fresh bath at the reference temperature that gives the same depth as a dip: `dipSeconds` solved
 * for the fresh time.
 * @example
 * equivalentSeconds({ law: "parabolic", ratePerSecond: 0.01, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, { seconds: 120, strength: 0.5, celsius: 80 }) // => 30
 */
export const equivalentSeconds = (
  model: UptakeModel,
  { seconds, strength, celsius }: DippedIn & { readonly seconds: number },
): number =>
  freshSecondsAtStrength(model, (seconds * speedAt(model, celsius)) / (model.timeFactor ?? 1), strength);

/**
 * Depth of a dip: dye taken up per area relative to the longest swatch.
 * @example
 * depthAt({ law: "second-order", ratePerSecond: 0.01, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, { seconds: 100, strength: 0.7, celsius: 80 }) // => 0.7
 */
export const depthAt = (model: UptakeModel, dip: DippedIn & { readonly seconds: number }): number =>
  freshDepth(model, equivalentSeconds(model, dip));
