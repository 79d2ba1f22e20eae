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

/** Leaves out each swatch in turn and predicts its colour from the others. */
function leaveOneOut(set: SwatchSet, law: LawName, givenRate?: number): LeaveOneOut {
  const errors = set.swatches.map((swatch) => {
    const others = { ...set, swatches: set.swatches.filter((other) => other !== swatch) };
    return ciede2000(labAfter(shadeCurve(others, law, givenRate), swatch.seconds), swatch.lab);
  });
  return { law, mean: mean(errors)!, median: median(errors)!, max: Math.max(...errors) };
}

/** The shade curve under the given law, or the one with the least error, and the errors of all. */
export interface ChosenCurve {
  readonly curve: ShadeCurve;
  /** Empty where too few swatches are there to leave one out. */
  readonly tried: readonly LeaveOneOut[];
}

/**
 * `auto` takes the law with the smallest mean leave-one-out error; within 0.1 CIEDE2000 of the best the earlier
 * in the list wins. With two swatches or fewer it is first-order, which then nothing checks.
 */
export function chooseCurve(set: SwatchSet, law: LawName | "auto", givenRate?: number): ChosenCurve {
  const enough = set.swatches.length > 2;
  const laws = law === "auto" ? lawNames : [law];
  if (!enough) return { curve: shadeCurve(set, law === "auto" ? "first-order" : law, givenRate), tried: [] };
  const tried = laws.map((name) => leaveOneOut(set, name, givenRate));
  return { curve: shadeCurve(set, firstOfBest(tried).law, givenRate), tried };
}
