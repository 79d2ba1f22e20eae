import type { Lab } from "../../model/batch.js";
import { timeDoubt } from "../shade/time-doubt.js";
import type { ChosenCurve } from "./choose-law.js";
import { labAfter, shadeCurve } from "./shade-curve.js";
import { dyedColour, type SwatchSet } from "./swatch-curves.js";

/** What one more swatch would do for the doubt about a target. */
export interface SwatchSuggestion {
  readonly seconds: number;
  /** Width of the 95 % interval of the time, now and with the swatch, in seconds of a fresh bath. */
  readonly widthNow: number;
  readonly widthThen: number;
}

const candidates = 14;

/**
 * The time [s] of the next swatch that most shrinks the 95 % interval of the time for a target: each candidate is
 * tried with the colour that the curve foretells for it. Undefined where none shrinks it.
 */
export function suggestSwatch(
  chosen: ChosenCurve,
  target: Lab,
  givenRate?: number,
): SwatchSuggestion | undefined {
  const { curve } = chosen;
  const width = (of: ChosenCurve): number => {
    const [low, high] = timeDoubt(of, target, { givenRate }).interval95;
    return high - low;
  };
  const widthNow = width(chosen);
  const last = Math.log1p(curve.referenceSeconds);
  const first = Math.log1p(Math.min(5, curve.referenceSeconds / 4));
  let best: SwatchSuggestion | undefined;
  for (let i = 0; i < candidates; i++) {
    const raw = Math.expm1(first + ((last - first) * i) / (candidates - 1));
    const seconds = raw < 20 ? Math.round(raw) : Math.round(raw / 5) * 5;
    const set = withSwatch(curve.set, seconds, labAfter(curve, seconds));
    if (!set) continue;
    const widthThen = width({ curve: shadeCurve(set, curve.law, givenRate), tried: chosen.tried });
    if (widthThen < (best?.widthThen ?? widthNow)) best = { seconds, widthNow, widthThen };
  }
  return best;
}

function withSwatch(set: SwatchSet, seconds: number, lab: Lab): SwatchSet | undefined {
  if (set.swatches.some((swatch) => swatch.seconds === seconds)) return undefined;
  const dyed = dyedColour({ kind: "lab", lab }, set.reading, []);
  if (!dyed.ok) return undefined;
  const swatches = [...set.swatches, { ...dyed.value, seconds }].sort((a, b) => a.seconds - b.seconds);
  return { ...set, swatches };
}
