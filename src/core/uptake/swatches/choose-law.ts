import { mean, median } from "d3-array";
import { ciede2000 } from "../../colour/difference/ciede2000.js";
import type { LawName } from "../../model/batch.js";
import { lawNames } from "../law/laws.js";
import { labAfter, type ShadeCurve, shadeCurve } from "./shade-curve.js";
import type { SwatchSet } from "./swatch-curves.js";

/** Leave-one-out prediction error of a law [CIEDE2000]. */
export interface LeaveOneOut {
  readonly law: LawName;
  readonly mean: number;
  readonly median: number;
  readonly max: number;
}

/** Up to this difference of mean errors the earlier law of the list wins [CIEDE2000]. */
const tie = 0.1;

/** The first law whose mean error is within a tie of the smallest. */
export function firstOfBest(tried: readonly LeaveOneOut[]): LeaveOneOut {
  const best = Math.min(...tried.map(({ mean }) => mean));
  return tried.find(({ mean }) => mean <= best + tie)!;
}

/** A law whose mean error is at most this far above the smallest may be the true one [CIEDE2000]. */
const plausible = 0.3;

/** Of the laws tried those that may be the true one. */
export function plausibleLaws(tried: readonly LeaveOneOut[]): LeaveOneOut[] {
  const best = Math.min(...tried.map(({ mean }) => mean));
  return tried.filter(({ mean }) => mean <= best + plausible);
}

/**
 * Leaves out each swatch in turn and predicts its colour from the others; undefined as soon as the mean error must be
 * larger than `most`.
 */
function leaveOneOut(
  set: SwatchSet,
  law: LawName,
  givenRate: number | undefined,
  most: number,
): LeaveOneOut | undefined {
  const errors: number[] = [];
  let sum = 0;
  for (const swatch of set.swatches) {
    const others = { ...set, swatches: set.swatches.filter((other) => other !== swatch) };
    const error = ciede2000(labAfter(shadeCurve(others, law, givenRate), swatch.seconds), swatch.lab);
    errors.push(error);
    sum += error;
    if (sum / set.swatches.length > most) return undefined;
  }
  return { law, mean: mean(errors)!, median: median(errors)!, max: Math.max(...errors) };
}

/** The shade curve under the given law, or the one with the least error, and the errors of laws. */
export interface ChosenCurve {
  readonly curve: ShadeCurve;
  /**
   * All laws that may be the true one, and others; empty where too few swatches are there to leave one out.
   */
  readonly tried: readonly LeaveOneOut[];
}

/**
 * `auto` takes the law with the smallest mean leave-one-out error; within 0.1 CIEDE2000 of the best the earlier
 * in the list wins. With two swatches or fewer it is first-order, which then nothing checks.
 * @param every tries every law to the end, also one that others have beaten by then
 */
export function chooseCurve(
  set: SwatchSet,
  law: LawName | "auto",
  givenRate?: number,
  every = false,
): ChosenCurve {
  const enough = set.swatches.length > 2;
  const laws = law === "auto" ? lawNames : [law];
  if (!enough) return { curve: shadeCurve(set, law === "auto" ? "first-order" : law, givenRate), tried: [] };
  const tried: LeaveOneOut[] = [];
  let most = Number.POSITIVE_INFINITY;
  for (const name of laws) {
    const found = leaveOneOut(set, name, givenRate, most);
    if (found === undefined) continue;
    tried.push(found);
    if (!every) most = Math.min(most, found.mean + plausible);
  }
  return { curve: shadeCurve(set, firstOfBest(tried).law, givenRate), tried };
}
