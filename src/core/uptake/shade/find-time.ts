import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { findMinimum } from "../../maths/minimum.js";
import { findRoot } from "../../maths/root.js";
import type { Lab } from "../../model/batch.js";
import { labAfter, type ShadeCurve } from "../swatches/shade-curve.js";

/** Times within a tolerance; the far end is null where the curve, extrapolated to twice its length, stays within. */
export type TimeWindow = readonly [from: number, to: number | null];

/** Where along a shade curve a colour is met best; times in a fresh bath at the dye's temperature. */
export interface NearestTime {
  readonly seconds: number;
  readonly lab: Lab;
  readonly deltaE00: number;
  /** Times between which the difference stays within the tolerance; null where it never does. */
  readonly window: TimeWindow | null;
}

/** The search runs over ln(1 + t), on which swatches of 15 to 300 s lie about evenly. */
const steps = 64;
const toTime = (u: number): number => Math.expm1(u);

/** How many times its length a curve is extrapolated, to look for the far end of a window or a colour of another bath. */
export const beyondSwatches = 2;

/** The times around `start` between which `excess` is not positive; places are ln(1 + t). */
function stretch(excess: (u: number) => number, start: number, last: number, step: number): TimeWindow {
  const reach = (sign: 1 | -1, limit: number): number => {
    let inside = start;
    while (inside !== limit) {
      const next = sign > 0 ? Math.min(limit, inside + step) : Math.max(limit, inside - step);
      if (excess(next) > 0)
        return (
          findRoot(excess, sign > 0 ? { low: inside, high: next } : { low: next, high: inside }) ?? inside
        );
      inside = next;
    }
    return limit;
  };
  const far = reach(1, last);
  return [toTime(reach(-1, 0)), far === last ? null : toTime(far)];
}

/**
 * The time up to the longest swatch, or the longest dip where that is longer, whose colour differs least from a target (CIEDE2000), and the times
 * around it within a tolerance.
 */
export function nearestTime(
  curve: ShadeCurve,
  target: Lab,
  tolerance: number,
  baseKs?: Float64Array,
  longestSeconds = curve.referenceSeconds,
): NearestTime {
  const longest = Math.max(longestSeconds, curve.referenceSeconds);
  const last = Math.log1p(longest);
  const difference = (u: number): number => ciede2000(labAfter(curve, toTime(u), baseKs), target);
  const step = last / steps;
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= steps; i++) {
    const value = difference(i * step);
    if (value < least) [best, least] = [i * step, value];
  }
  const bracket = { low: Math.max(0, best - step), high: Math.min(last, best + step), tolerance: 1e-7 };
  const refined = findMinimum(difference, bracket);
  if (refined.value < least) [best, least] = [refined.x, refined.value];
  const lab = labAfter(curve, toTime(best), baseKs);
  if (least > tolerance) return { seconds: toTime(best), lab, deltaE00: least, window: null };
  const far = Math.log1p(beyondSwatches * longest);
  const window = stretch((u) => difference(u) - tolerance, best, far, step / 2);
  return { seconds: toTime(best), lab, deltaE00: least, window };
}

/** The times around a time whose colours stay within a tolerance of that time's colour. */
export function windowAround(
  curve: ShadeCurve,
  seconds: number,
  tolerance: number,
  baseKs?: Float64Array,
): TimeWindow {
  const target = labAfter(curve, seconds, baseKs);
  const at = Math.log1p(seconds);
  const far = Math.log1p(beyondSwatches * Math.max(seconds, curve.referenceSeconds));
  const excess = (u: number): number => ciede2000(labAfter(curve, toTime(u), baseKs), target) - tolerance;
  return stretch(excess, at, far, far / steps / 2);
}

/** CIEDE2000 by which the colour moves per second of fresh-bath time, by a central difference. */
export function colourPerSecond(curve: ShadeCurve, seconds: number, baseKs?: Float64Array): number {
  const step = 1e-3 * Math.max(1, seconds);
  const low = Math.max(0, seconds - step);
  const high = seconds + step;
  return ciede2000(labAfter(curve, low, baseKs), labAfter(curve, high, baseKs)) / (high - low);
}
