import { celsiusForFactor } from "../law/arrhenius.js";
import { rateAt, referenceUptake, type UptakeModel } from "../law/depth.js";
import { strengthForUptake, uptakeAtStrength } from "../law/isotherm.js";
import { lawInverse, lawUptake } from "../law/laws.js";

/** What would bring a dip to a time that a hand can keep; each alone, undefined where it cannot. */
export interface WayOut {
  readonly seconds: number;
  /** Strength of the bath relative to a fresh one, at the temperature as it is. */
  readonly strength: number | undefined;
  /** Temperature of the bath, at the strength as it is. */
  readonly celsius: number | undefined;
}

/**
 * The strength, or the temperature, at which a depth takes a given time [s].
 *
 * From D = a(s) g(k(T) t)/g(k(T_ref) t_ref), solved for s and for T. A strength above that of the concentrate, or
 * a temperature at which water does not stay liquid, is for the caller to refuse.
 * @example
 * bringTo({ law: "second-order", ratePerSecond: 0.01, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, { depth: 0.4, strength: 1, celsius: 80 }, 100).strength // => 0.4
 * bringTo({ law: "first-order", ratePerSecond: 0.02, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, { depth: 0.5, strength: 1, celsius: 80 }, 28.31).celsius // => 80.0
 */
export function bringTo(
  model: UptakeModel,
  dip: { readonly depth: number; readonly strength: number; readonly celsius: number },
  seconds = 60,
): WayOut {
  const { law, ratePerSecond, saturation } = model;
  const needed = dip.depth * referenceUptake(model);
  const uptake = lawUptake(law, rateAt(model, dip.celsius) * seconds);
  const strength = strengthForUptake(needed / uptake, saturation);
  const x = lawInverse(law, needed / uptakeAtStrength(dip.strength, saturation));
  const factor = x === undefined ? undefined : x / seconds / ratePerSecond;
  return {
    seconds,
    strength,
    celsius: factor === undefined || !(factor > 0) ? undefined : celsiusForFactor({ ...model, factor }),
  };
}
