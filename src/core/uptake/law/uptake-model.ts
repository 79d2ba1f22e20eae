import type { LawName } from "../../model/batch.js";
import { rateFactor } from "./arrhenius.js";
import { lawInverse, lawUptake } from "./laws.js";

/** How a dye goes in: depth 1 is what the reference time gives in a fresh bath at the reference temperature. */
export interface UptakeModel {
  readonly law: LawName;
  /** k_ref [1/s], at the reference temperature. */
  readonly ratePerSecond: number;
  /** t_ref [s]: the longest swatch. */
  readonly referenceSeconds: number;
  /** T_ref [°C]: the temperature that the dye was measured at. */
  readonly referenceCelsius: number;
  /** h of the isotherm [-]; absent: linear. */
  readonly saturation?: number;
  readonly activationEnergyJPerMol: number;
  /** p of t(s) = t(1) s^-p, as measured; absent: from the law, between the limits of film and thick body. */
  readonly strengthExponent?: number;
  /** Factor on all times, from a dip in the bath as it is; 1 where absent. */
  readonly timeFactor?: number;
}

type FreshUptake = Pick<UptakeModel, "law" | "ratePerSecond" | "referenceSeconds">;

/** k(T)/k(T_ref): how many times faster the dye goes in at a temperature [°C]. */
export const speedAt = (model: UptakeModel, celsius: number): number => rateFactor({ ...model, celsius });

/** g(k t_ref): uptake at depth 1, relative to the plateau. */
export const referenceUptake = (model: FreshUptake): number =>
  lawUptake(model.law, model.ratePerSecond * model.referenceSeconds);

/**
 * Depth after a time [s] in a fresh bath at the reference temperature: D = g(k t)/g(k t_ref).
 * @example
 * freshDepth({ law: "second-order", ratePerSecond: 0.01, referenceSeconds: 100 }, 300) // => 1.5
 */
export const freshDepth = (model: FreshUptake, seconds: number): number =>
  lawUptake(model.law, model.ratePerSecond * seconds) / referenceUptake(model);

/**
 * The time [s] that gives a depth in a fresh bath at the reference temperature; undefined where none does.
 * @example
 * freshSeconds({ law: "parabolic", ratePerSecond: 0.01, referenceSeconds: 180 }, 0.5) // => 45
 * freshSeconds({ law: "second-order", ratePerSecond: 0.01, referenceSeconds: 100 }, 2) // => undefined
 */
export function freshSeconds(model: FreshUptake, depth: number): number | undefined {
  const x = lawInverse(model.law, depth * referenceUptake(model));
  return x === undefined ? undefined : x / model.ratePerSecond;
}
