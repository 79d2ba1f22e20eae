import type { Lab } from "../../model/batch.js";
import { type DippedIn, dipSeconds } from "../law/dip-time.js";
import type { UptakeModel } from "../law/uptake-model.js";
import type { ChosenCurve } from "../swatches/choose-law.js";
import type { DyeModel } from "./dye-model.js";
import { beyondSwatches, nearestTime } from "./find-time.js";
import type { TrialRead } from "./time-doubt.js";

/** A trial whose colour is farther from the dye's curve than this says little [CIEDE2000]. */
export const offCurveFrom = 3;

/** A dye's uptake as one dip in the bath as it is corrects it. */
export interface TriedUptake {
  /** With the factor on all times in that bath. */
  readonly uptake: UptakeModel;
  readonly trial: TrialRead;
  /** On the times that were foreseen. */
  readonly factor: number;
  /** Between the colour read and the nearest that the dye gives. */
  readonly deltaE00: number;
}

/**
 * Corrects all times in a bath by one dip in it: the factor on them is the time really taken over the time that the
 * model gives for the colour read.
 * @param bath strength relative to the bath that the dye was measured in, temperature [°C]
 */
export function withTrial(
  { uptake, chosen, longestSeconds }: DyeModel & { readonly chosen: ChosenCurve },
  { seconds, lab }: { readonly seconds: number; readonly lab: Lab },
  bath: DippedIn,
  baseKs?: Float64Array,
): TriedUptake {
  const { curve } = chosen;
  const longest = Math.max(longestSeconds, beyondSwatches * curve.referenceSeconds);
  const nearest = nearestTime(curve, lab, 0, baseKs, longest);
  const foreseen = dipSeconds(uptake, nearest.seconds, bath);
  const factor = seconds / foreseen;
  return {
    uptake: { ...uptake, timeFactor: (uptake.timeFactor ?? 1) * factor },
    factor,
    trial: { seconds, lab, freshSeconds: nearest.seconds },
    deltaE00: nearest.deltaE00,
  };
}
