import { ciede2000 } from "../../colour/difference/ciede2000.js";
import type { Lab } from "../../model/batch.js";
import { mixedLab, mixtureOf } from "../mixture/mixture.js";
import { firstDoubt95 } from "../solve/doubt.js";
import type { MixTrial } from "./fit-trials.js";

/**
 * A reading that is farther off than this many times the doubt of 95 of 100 cases, three standard deviations, is more likely
 * a slip of the hand. Common practice, no source.
 */
const mostDoubts = 1.5;

/** What the swatches alone predict of a trial, and how far its reading is from that [CIEDE2000]. */
export interface UnlikelyTrial {
  readonly predicted: Lab;
  readonly deltaE00: number;
  readonly doubt95: number;
}

/** A trial whose reading is too far from its prediction to be believed; undefined where it is not. */
export function unlikelyTrial({
  dyes,
  strengths,
  seconds,
  celsius,
  lab,
}: MixTrial): UnlikelyTrial | undefined {
  const mixture = mixtureOf(dyes, seconds, undefined, celsius);
  const predicted = mixedLab(mixture, strengths);
  const deltaE00 = ciede2000(predicted, lab);
  const doubt95 = firstDoubt95(mixture, strengths);
  return deltaE00 > mostDoubts * doubt95 ? { predicted, deltaE00, doubt95 } : undefined;
}
