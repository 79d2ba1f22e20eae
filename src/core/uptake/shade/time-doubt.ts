import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { findMinimum } from "../../maths/minimum.js";
import type { Lab } from "../../model/batch.js";
import type { ChosenCurve } from "../swatches/choose-law.js";
import { labAfter, refitted, type ShadeCurve, shadeCurve } from "../swatches/shade-curve.js";
import { dyedColour, type SwatchSet } from "../swatches/swatch-curves.js";
import { nearestTime } from "./find-time.js";

/** How far off a time may be for the noise of the readings it rests on. */
export interface TimeDoubt {
  /** Taken per CIELAB axis: that of the readings, or more where the swatches foretell each other worse. */
  readonly noise: number;
  /** One standard deviation of ln(1 + t). */
  readonly sdLog: number;
  /** The interval [s] that holds the time in a fresh bath in 95 of 100 cases. */
  readonly interval95: readonly [number, number];
}

/** Reading noise per CIELAB axis where none is given, one standard deviation. */
const readingNoise = 0.3;

const nudged = (lab: Lab, axis: number, by: number): Lab =>
  lab.map((value, i) => (i === axis ? value + by : value)) as unknown as Lab;

/** The set with the reading of one swatch, or of the base (-1), nudged along one axis. */
function nudgedSet(set: SwatchSet, at: number, axis: number, by: number): SwatchSet | undefined {
  const old = at < 0 ? set.base : set.swatches[at]!;
  const lab = nudged(old.lab, axis, by);
  const dyed = dyedColour({ kind: "lab", lab }, set.reading, []);
  if (!dyed.ok) return undefined;
  if (at < 0) return { ...set, base: dyed.value };
  return {
    ...set,
    swatches: set.swatches.map((swatch, i) =>
      i === at ? { ...dyed.value, seconds: swatch.seconds } : swatch,
    ),
  };
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

/** A law whose mean error is at most this far above the smallest may be the true one [CIEDE2000]. */
const plausible = 0.3;

/**
 * The doubt of the fresh-bath time for a target. From noise in the readings of swatches and base: the time's
 * derivative by each reading (rate found anew each time), added in squares. From the
 * law: half the largest change that another plausible law would make, likewise.
 *
 * noise [CIELAB units per axis, one standard deviation]; the target itself is taken as exact. The interval is
 * symmetric in ln(1 + t), 1.96 standard deviations to each side.
 */
export function timeDoubt(
  chosen: ChosenCurve,
  target: Lab,
  options: {
    readonly noise?: number;
    readonly givenRate?: number | undefined;
    /** K/S of a base that is not the swatches' own. */
    readonly baseKs?: Float64Array | undefined;
  } = {},
): TimeDoubt {
  const noise = Math.max(options.noise ?? readingNoise, noiseAmongSwatches(chosen));
  const { curve, tried } = chosen;
  const { givenRate, baseKs } = options;
  const { set } = curve;
  const here = nearestLog(curve, target, Math.log1p(nearestTime(curve, target, 0, baseKs).seconds), baseKs);
  let variance = 0;
  for (let at = -1; at < set.swatches.length; at++)
    for (let axis = 0; axis < 3; axis++) {
      // One side is enough, and each costs a smooth reflectance: the other only where this one has none.
      const moved = nudgedSet(set, at, axis, noise) ?? nudgedSet(set, at, axis, -noise);
      if (moved)
        variance += (nearestLog(refitted(curve, moved, givenRate), target, here, baseKs) - here) ** 2;
    }
  const best = Math.min(...tried.map(({ mean }) => mean));
  const others = tried.filter(({ law, mean }) => law !== curve.law && mean <= best + plausible);
  const shifts = others.map(({ law }) =>
    Math.abs(nearestLog(shadeCurve(set, law, givenRate), target, here, baseKs) - here),
  );
  variance += (Math.max(0, ...shifts) / 2) ** 2;
  const sdLog = Math.sqrt(variance);
  return {
    sdLog,
    noise,
    interval95: [Math.max(0, Math.expm1(here - 1.96 * sdLog)), Math.expm1(here + 1.96 * sdLog)],
  };
}
