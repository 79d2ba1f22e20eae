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

/** The colour after a time [s]. */
export type LabAt = (seconds: number) => Lab;

/**
 * The time up to a longest whose colour differs least from a target (CIEDE2000), and the times around it within a
 * tolerance. `places`: looked at before the nearest one is refined.
 */
export function nearestOn(
  labAt: LabAt,
  target: Lab,
  tolerance: number,
  longest: number,
  places = steps,
): NearestTime {
  const last = Math.log1p(longest);
  const difference = (u: number): number => ciede2000(labAt(toTime(u)), target);
  const step = last / places;
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= places; i++) {
    const value = difference(i * step);
    if (value < least) [best, least] = [i * step, value];
  }
  const bracket = { low: Math.max(0, best - step), high: Math.min(last, best + step), tolerance: 1e-7 };
  const refined = findMinimum(difference, bracket);
  if (refined.value < least) [best, least] = [refined.x, refined.value];
  const lab = labAt(toTime(best));
  if (least > tolerance) return { seconds: toTime(best), lab, deltaE00: least, window: null };
  const far = Math.log1p(beyondSwatches * longest);
  const window = stretch((u) => difference(u) - tolerance, best, far, step / 2);
  return { seconds: toTime(best), lab, deltaE00: least, window };
}

/** The times around a time whose colours stay within a tolerance of a target; that of the time itself does. */
export function windowOn(
  labAt: LabAt,
  { seconds, target }: { readonly seconds: number; readonly target: Lab },
  tolerance: number,
  longest: number,
): TimeWindow {
  const far = Math.log1p(beyondSwatches * longest);
  const excess = (u: number): number => ciede2000(labAt(toTime(u)), target) - tolerance;
  return stretch(excess, Math.log1p(seconds), far, far / steps / 2);
}

/** CIEDE2000 by which the colour moves per second at a time, by a central difference. */
export function slopeOn(labAt: LabAt, seconds: number): number {
  const step = 1e-3 * Math.max(1, seconds);
  const low = Math.max(0, seconds - step);
  const high = seconds + step;
  return ciede2000(labAt(low), labAt(high)) / (high - low);
}

const on =
  (curve: ShadeCurve, baseKs?: Float64Array): LabAt =>
  (seconds) =>
    labAfter(curve, seconds, baseKs);

/** `nearestOn` along a shade curve, up to the longest swatch, or the longest dip where that is longer. */
export const nearestTime = (
  curve: ShadeCurve,
  target: Lab,
  tolerance: number,
  baseKs?: Float64Array,
  longestSeconds = curve.referenceSeconds,
): NearestTime =>
  nearestOn(on(curve, baseKs), target, tolerance, Math.max(longestSeconds, curve.referenceSeconds));

/** The times around a time whose colours stay within a tolerance of that time's colour. */
export const windowAround = (
  curve: ShadeCurve,
  seconds: number,
  tolerance: number,
  baseKs?: Float64Array,
): TimeWindow => {
  const target = labAfter(curve, seconds, baseKs);
  return windowOn(
    on(curve, baseKs),
    { seconds, target },
    tolerance,
    Math.max(seconds, curve.referenceSeconds),
  );
};

/** `slopeOn` along a shade curve, per second of fresh-bath time. */
export const colourPerSecond = (curve: ShadeCurve, seconds: number, baseKs?: Float64Array): number =>
  slopeOn(on(curve, baseKs), seconds);
