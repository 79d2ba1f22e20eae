import { celsiusForFactor } from "../law/arrhenius.js";
import type { DippedIn } from "../law/dip-time.js";
import { slowing, strengthForSlowing } from "../law/slowing.js";
import { speedAt, type UptakeModel } from "../law/uptake-model.js";

/** What would bring a dip to a time that can be kept by hand; each alone, undefined where it cannot. */
export interface WayOut {
  readonly seconds: number;
  /** Strength of the bath relative to a fresh one, at the temperature as it is. */
  readonly strength: number | undefined;
  /** Temperature of the bath, at the strength as it is. */
  readonly celsius: number | undefined;
}

/**
 * The strength, or the temperature, at which the depth of a fresh time takes a given time [s].
 *
 * From t = t_fresh m(s) f k(T_ref)/k(T), solved for s and for T. A strength above that of the concentrate, or a
 * temperature at which water does not stay liquid, is for the caller to refuse.
 * @example
 * bringTo({ law: "parabolic", ratePerSecond: 0.01, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, 25, { strength: 1, celsius: 80 }, 100).strength // => 0.5
 * bringTo({ law: "first-order", ratePerSecond: 0.02, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, 30, { strength: 1, celsius: 80 }, 30).celsius // => 80.0
 */
export function bringTo(model: UptakeModel, freshSeconds: number, bath: DippedIn, seconds = 60): WayOut {
  const { timeFactor = 1 } = model;
  const factor = (freshSeconds * timeFactor) / seconds;
  return {
    seconds,
    strength:
      freshSeconds > 0
        ? strengthForSlowing(model, freshSeconds, speedAt(model, bath.celsius) / factor)
        : undefined,
    celsius:
      factor > 0
        ? celsiusForFactor({ ...model, factor: factor * slowing(model, freshSeconds, bath.strength) })
        : undefined,
  };
}
