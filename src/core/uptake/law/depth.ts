import type { LawName } from "../../model/batch.js";
import { rateFactor } from "./arrhenius.js";
import { uptakeAtStrength } from "./isotherm.js";
import { lawInverse, lawUptake } from "./laws.js";

/** How a dye goes in: depth 1 is what the reference time gives in a fresh bath at the reference temperature. */
export interface UptakeModel {
  readonly law: LawName;
  /** k_ref [1/s], at the reference temperature. */
  readonly ratePerSecond: number;
  /** t_ref [s]: the longest swatch. */
  readonly referenceSeconds: number;
  /** T_ref [°C]: the dye's own temperature. */
  readonly referenceCelsius: number;
  /** h of the isotherm [-]; absent: linear. */
  readonly saturation?: number;
  readonly activationEnergyJPerMol: number;
}

/** k at a temperature [1/s]. */
export const rateAt = (model: UptakeModel, celsius: number): number =>
  model.ratePerSecond * rateFactor({ ...model, celsius });

type FreshUptake = Pick<UptakeModel, "law" | "ratePerSecond" | "referenceSeconds">;

/** g(k_ref t_ref): uptake that depth 1 stands for, relative to the plateau. */
export const referenceUptake = (model: FreshUptake): number =>
  lawUptake(model.law, model.ratePerSecond * model.referenceSeconds);

/**
 * Depth after a time [s] in a fresh bath at the reference temperature: `depthAt` at strength 1 there.
 * @example
 * freshDepth({ law: "second-order", ratePerSecond: 0.01, referenceSeconds: 100 }, 300) // => 1.5
 */
export const freshDepth = (model: FreshUptake, seconds: number): number =>
  lawUptake(model.law, model.ratePerSecond * seconds) / referenceUptake(model);

/**
 * Depth of a dip: dye taken up per area relative to the longest swatch.
 *
 * D = a(s) g(k(T) t) / g(k(T_ref) t_ref); t time [s], s strength while dipping [-], T temperature [°C].
 * @example
 * depthAt({ law: "second-order", ratePerSecond: 0.01, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, { seconds: 100, strength: 0.7, celsius: 80 }) // => 0.7
 */
export function depthAt(
  model: UptakeModel,
  dip: { readonly seconds: number; readonly strength: number; readonly celsius: number },
): number {
  const uptake = lawUptake(model.law, rateAt(model, dip.celsius) * dip.seconds);
  return (uptakeAtStrength(dip.strength, model.saturation) * uptake) / referenceUptake(model);
}

/** Time [s] for a depth at a strength; undefined where the bath does not reach it at any time. */
export type DipTimer = (depth: number, strength: number) => number | undefined;

/**
 * `secondsForDepth` at one temperature [°C], with what does not change worked out once: the life of a bath
 * is ten thousand dips. Strengths are multiplied by `madeUp`.
 */
export function dipTimer(model: UptakeModel, celsius: number, madeUp = 1): DipTimer {
  const { law, saturation } = model;
  const rate = rateAt(model, celsius);
  const reference = referenceUptake(model);
  return (depth, strength) => {
    if (depth === 0) return 0;
    const isotherm = uptakeAtStrength(strength * madeUp, saturation);
    if (!(isotherm > 0)) return undefined;
    const x = lawInverse(law, (depth * reference) / isotherm);
    return x === undefined ? undefined : x / rate;
  };
}

/**
 * The depth that a bath of a strength comes up to however long the dip: a(s)/g(k t_ref); without end by the
 * parabolic law, which has no plateau.
 * @example
 * deepestDepth({ law: "second-order", ratePerSecond: 0.01, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, 0.7) // => 1.4
 */
export const deepestDepth = (model: UptakeModel, strength: number): number =>
  model.law === "parabolic"
    ? Number.POSITIVE_INFINITY
    : uptakeAtStrength(strength, model.saturation) / referenceUptake(model);

/**
 * Time [s] that a depth takes in a bath as it is; undefined where the bath does not reach it at any time.
 * @example
 * secondsForDepth({ law: "second-order", ratePerSecond: 0.01, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, { depth: 0.5, strength: 1, celsius: 80 }) // => 33.3333333333
 * secondsForDepth({ law: "second-order", ratePerSecond: 0.01, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, { depth: 1.5, strength: 0.7, celsius: 80 }) // => undefined
 */
export function secondsForDepth(
  model: UptakeModel,
  want: { readonly depth: number; readonly strength: number; readonly celsius: number },
): number | undefined {
  return dipTimer(model, want.celsius)(want.depth, want.strength);
}

/**
 * The time [s] that gives a depth in a fresh bath at the reference temperature; undefined where none does,
 * as for a depth that only an overstrength bath reaches.
 * @example
 * equivalentSeconds({ law: "parabolic", ratePerSecond: 0.01, referenceSeconds: 180, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, 0.5) // => 45
 */
export function equivalentSeconds(model: UptakeModel, depth: number): number | undefined {
  return secondsForDepth(model, { depth, strength: 1, celsius: model.referenceCelsius });
}
