import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { findMinimum } from "../../maths/minimum.js";
import { halfWidth95 } from "../../maths/sampling/half-width-95.js";
import type { Lab } from "../../model/batch.js";
import { type ChosenCurve, plausibleLaws } from "../swatches/choose-law.js";
import { labAfter, refitted, type ShadeCurve, shadeCurve } from "../swatches/shade-curve.js";
import { dyedColour, type SwatchSet } from "../swatches/swatch-curves.js";

/** Reading noise per CIELAB axis where none is given, one standard deviation. */
const readingNoise = 0.3;

/** How a fresh-bath time may be off: shifts of ln(1 + t) by what is not known, each one standard deviation. */
export interface FreshShifts {
  /** Taken per CIELAB axis: that of the readings, or more where the leave-one-out error is large. */
  readonly noise: number;
  /** ln(1 + t) of the time itself. */
  readonly here: number;
  /** By the reading of each swatch and of the base, an axis each. */
  readonly readings: readonly number[];
  /** By the timing of each swatch. */
  readonly timing: readonly number[];
  /** By each other law that is nearly as good: the whole change. */
  readonly laws: readonly number[];
}

const nudged = (lab: Lab, axis: number, by: number): Lab =>
  lab.map((value, i) => (i === axis ? value + by : value)) as unknown as Lab;

/** The set with the reading of one swatch, or of the base (-1), nudged along one axis. */
function nudgedSet(set: SwatchSet, at: number, axis: number, by: number): SwatchSet | undefined {
  const old = at < 0 ? set.base : set.swatches[at]!;
  const dyed = dyedColour({ kind: "lab", lab: nudged(old.lab, axis, by) }, set.reading, []);
  if (!dyed.ok) return undefined;
  if (at < 0) return { ...set, base: dyed.value };
  return {
    ...set,
    swatches: set.swatches.map((swatch, i) =>
      i === at ? { ...dyed.value, seconds: swatch.seconds } : swatch,
    ),
  };
}

/** The set with one swatch timed otherwise. */
function retimedSet(set: SwatchSet, at: number, by: number): SwatchSet {
  const swatches = set.swatches
    .map((swatch, i) => (i === at ? { ...swatch, seconds: Math.max(0.1, swatch.seconds + by) } : swatch))
    .sort((a, b) => a.seconds - b.seconds);
  return { ...set, swatches };
}

/** Half the width, in ln(1 + t), of the stretch in which a nudged time is sought. */
const reach = 0.6;

/** ln(1 + t) at which a curve comes nearest to a target, near a place. */
function nearestLog(curve: ShadeCurve, target: Lab, near: number, baseKs: Float64Array | undefined): number {
  // A noisy target near the longest swatch may lie beyond it.
  const last = Math.log1p(2 * curve.referenceSeconds);
  const difference = (u: number): number => ciede2000(labAfter(curve, Math.expm1(u), baseKs), target);
  return findMinimum(difference, {
    low: Math.max(0, near - reach),
    high: Math.min(last, near + reach),
    tolerance: 1e-6,
  }).x;
}

// Median leave-one-out error [CIEDE2000] that readings without noise leave, and what one unit of noise per CIELAB
// axis adds. Found on the invented dyes of the simulation test, whose medians run from 0.2 without noise over 0.5
// at 0.3 and 1.3 at 1 to 2.6 at 2.
const errorWithoutNoise = 0.4;
const errorPerNoise = 1.3;

/**
 * Noise per CIELAB axis that explains the leave-one-out errors of the swatches; readings by phone or under
 * different lamps have much.
 */
const noiseAmongSwatches = ({ curve, tried }: ChosenCurve): number =>
  ((tried.find(({ law }) => law === curve.law)?.median ?? 0) - errorWithoutNoise) / errorPerNoise;

export interface DoubtOptions {
  readonly noise?: number;
  readonly givenRate?: number | undefined;
  /** Half-width of the 95 % interval of a dip's time [s]. */
  readonly timingSeconds: number;
}

/** Curves that the swatches may have meant, the rate of each found anew. */
export interface DoubtCurves {
  readonly own: ShadeCurve;
  /** Taken per CIELAB axis: that of the readings, or more where the leave-one-out error is large. */
  readonly noise: number;
  /** With the reading of a swatch or of the base off by the noise along one axis, up or down. */
  readonly readings: readonly { readonly curve: ShadeCurve; readonly sign: 1 | -1 }[];
  /** With a swatch timed otherwise. */
  readonly timing: readonly ShadeCurve[];
  /** Under each other law that is nearly as good. */
  readonly laws: readonly ShadeCurve[];
}

/** The curves that the doubt of any time on a chosen curve rests on. */
export function doubtCurves(chosen: ChosenCurve, options: DoubtOptions): DoubtCurves {
  const noise = Math.max(options.noise ?? readingNoise, noiseAmongSwatches(chosen));
  const { curve, tried } = chosen;
  const { givenRate } = options;
  const { set } = curve;
  const readings: DoubtCurves["readings"][number][] = [];
  for (let at = -1; at < set.swatches.length; at++)
    for (let axis = 0; axis < 3; axis++) {
      // One side is enough, and each costs a smooth reflectance: the other only where this one has none.
      const ahead = nudgedSet(set, at, axis, noise);
      const moved = ahead ?? nudgedSet(set, at, axis, -noise);
      if (moved) readings.push({ curve: refitted(curve, moved, givenRate), sign: ahead ? 1 : -1 });
    }
  const deviation = options.timingSeconds / halfWidth95;
  return {
    own: curve,
    noise,
    readings,
    timing: set.swatches.map((_, at) => refitted(curve, retimedSet(set, at, deviation), givenRate)),
    laws: plausibleLaws(tried)
      .filter(({ law }) => law !== curve.law)
      .map(({ law }) => shadeCurve(set, law, givenRate)),
  };
}

/**
 * How far each thing that is not known moves the fresh-bath time for a target.
 * @param near fresh time for the target [s]
 * @param baseKs K/S of a base that is not the swatches' own
 */
export function freshShifts(
  { own, noise, readings, timing, laws }: DoubtCurves,
  target: Lab,
  near: number,
  baseKs?: Float64Array,
): FreshShifts {
  const here = nearestLog(own, target, Math.log1p(near), baseKs);
  const shift = (other: ShadeCurve): number => nearestLog(other, target, here, baseKs) - here;
  return {
    noise,
    here,
    readings: readings.map(({ curve, sign }) => sign * shift(curve)),
    timing: timing.map(shift),
    laws: laws.map(shift),
  };
}

/** Shift of the time by the noise of the target's own reading, an axis each. */
export function ownShifts(
  { own, noise }: DoubtCurves,
  target: Lab,
  { here }: FreshShifts,
  baseKs?: Float64Array,
): number[] {
  return [0, 1, 2].map((axis) => nearestLog(own, nudged(target, axis, noise), here, baseKs) - here);
}

/**
 * Doubt of ln(t/t_fresh) of a dip whose colour was read, t_fresh the fresh time for that colour: from the readings and
 * the timing of the swatches, the choice of law, the dip's own reading and timing. One standard deviation.
 */
export function readDeviation(
  curves: DoubtCurves,
  dip: { readonly lab: Lab; readonly seconds: number; readonly freshSeconds: number },
  timingSeconds: number,
): number {
  const shifts = freshShifts(curves, dip.lab, dip.freshSeconds);
  const logPer = (1 + dip.freshSeconds) / dip.freshSeconds;
  const own = ownShifts(curves, dip.lab, shifts);
  const law = Math.max(0, ...shifts.laws.map(Math.abs)) / 2;
  const squares = [...shifts.readings, ...shifts.timing, ...own, law].map((shift) => (shift * logPer) ** 2);
  const timing = timingSeconds / halfWidth95 / dip.seconds;
  return Math.sqrt(squares.reduce((sum, square) => sum + square, timing ** 2));
}
