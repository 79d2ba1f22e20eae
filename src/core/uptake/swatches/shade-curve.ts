import { xyzToLab } from "../../colour/cielab.js";
import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { reflectanceOf } from "../../colour/spectrum/kubelka-munk.js";
import { curveWeights, type Weights } from "../../colour/spectrum/weights.js";
import { findMinimum } from "../../maths/minimum.js";
import { monotoneCubic } from "../../maths/monotone-cubic.js";
import type { Lab, LawName } from "../../model/batch.js";
import { uptakeLaws } from "../law/laws.js";
import { freshDepth } from "../law/uptake-model.js";
import type { SwatchSet } from "./swatch-curves.js";

/** How the colour of a dye grows with depth. */
export interface ShadeCurve {
  readonly law: LawName;
  readonly ratePerSecond: number;
  /** The longest swatch: depth 1. */
  readonly referenceSeconds: number;
  /** A: K/S added by depth 1 at each wavelength of the curve. */
  readonly absorption: Float64Array;
  readonly weights: Weights;
  /** What the spectral model misses, over ln(1 + t_eq / 1 s); held beyond the longest swatch. */
  readonly residual: (equivalentSeconds: number) => Lab;
  readonly set: SwatchSet;
}

/** CIELAB of K/S = base + A D, without residual. */
function spectralLab(baseKs: Float64Array, absorption: Float64Array, depth: number, weights: Weights): Lab {
  const { x, y, z } = weights;
  let X = 0;
  let Y = 0;
  let Z = 0;
  for (let i = 0; i < baseKs.length; i++) {
    const r = reflectanceOf(baseKs[i]! + absorption[i]! * depth);
    X += x[i]! * r;
    Y += y[i]! * r;
    Z += z[i]! * r;
  }
  return xyzToLab([X, Y, Z], weights.white);
}

/** A ≥ 0 by least squares over the swatches, for known depths, each wavelength by itself. */
function absorptionAt({ base, swatches }: SwatchSet, depths: ArrayLike<number>): Float64Array {
  const sums = new Float64Array(base.ks.length);
  let squares = 0;
  for (let j = 0; j < depths.length; j++) {
    const depth = depths[j]!;
    const { ks } = swatches[j]!;
    squares += depth * depth;
    for (let i = 0; i < sums.length; i++) sums[i]! += depth * (ks[i]! - base.ks[i]!);
  }
  for (let i = 0; i < sums.length; i++) sums[i] = Math.max(0, sums[i]! / squares);
  return sums;
}

interface Trial {
  readonly absorption: Float64Array;
  readonly depths: readonly number[];
}

function trial(set: SwatchSet, law: LawName, rate: number, reference: number): Trial {
  const uptake = { law, ratePerSecond: rate, referenceSeconds: reference };
  const depths = set.swatches.map(({ seconds }) => freshDepth(uptake, seconds));
  return { absorption: absorptionAt(set, depths), depths };
}

/** Sum of squared CIEDE2000 over the swatches, or part of it if that is more than `most` already. */
function misfitOf(
  { base, swatches }: SwatchSet,
  { absorption, depths }: Trial,
  weights: Weights,
  most: number,
): number {
  let sum = 0;
  for (let i = 0; i < depths.length && sum <= most; i++)
    sum += ciede2000(spectralLab(base.ks, absorption, depths[i]!, weights), swatches[i]!.lab) ** 2;
  return sum;
}

// k t_ref is sought from a dip that has hardly begun to one that was over long ago.
const slowest = Math.log(0.02);
const fastest = Math.log(60);
const probes = 12;
const step = (fastest - slowest) / probes;
/** From the middle outwards: most rates lie there, and a misfit larger than one already found need not be added up. */
const probeOrder = Array.from({ length: probes + 1 }, (_, i) => i).sort(
  (a, b) => Math.abs(a - probes / 2) - Math.abs(b - probes / 2),
);

/** The rate that fits the swatches best under a law [1/s], or best near one; the parabolic law has no rate to find. */
function bestRate(set: SwatchSet, law: LawName, reference: number, weights: Weights, near?: number): number {
  if (!uptakeLaws[law].plateau) return 1 / reference;
  const misfit = (logProgress: number, most = Number.POSITIVE_INFINITY): number =>
    misfitOf(set, trial(set, law, Math.exp(logProgress) / reference, reference), weights, most);
  if (near !== undefined) {
    const middle = Math.log(near * reference);
    return (
      Math.exp(findMinimum(misfit, { low: middle - step, high: middle + step, tolerance: 1e-4 }).x) /
      reference
    );
  }
  let best = probes;
  let least = Number.POSITIVE_INFINITY;
  for (const probe of probeOrder) {
    const value = misfit(slowest + probe * step, least);
    // Of rates that fit equally well the slowest.
    if (value < least || (value === least && probe < best)) [best, least] = [probe, value];
  }
  const middle = slowest + best * step;
  const bracket = {
    low: Math.max(slowest, middle - step),
    high: Math.min(fastest, middle + step),
    tolerance: 1e-6,
  };
  return Math.exp(findMinimum(misfit, bracket).x) / reference;
}

const logTime = (seconds: number): number => Math.log1p(seconds);

/** The residual at the swatches, zero at the bare base, by monotone cubics over ln(1 + t). */
function residualOf(set: SwatchSet, labs: readonly Lab[]): (equivalentSeconds: number) => Lab {
  const x = [0, ...set.swatches.map(({ seconds }) => logTime(seconds))];
  const along = [0, 1, 2].map((axis) =>
    monotoneCubic(x, [0, ...set.swatches.map(({ lab }, i) => lab[axis]! - labs[i]![axis]!)]),
  );
  return (seconds) => {
    const at = logTime(seconds);
    return [along[0]!(at), along[1]!(at), along[2]!(at)];
  };
}

/**
 * The shade curve of a dye under one law: K/S(λ) = K/S_base(λ) + A(λ) D, A ≥ 0 by least squares, the rate
 * [1/s] by the smallest sum of squared CIEDE2000 over the swatches or as given, and what the model misses at
 * the swatches kept. So every swatch is reproduced exactly.
 */
export function shadeCurve(set: SwatchSet, law: LawName, givenRate?: number): ShadeCurve {
  const weights = curveWeights(set.reading);
  const reference = set.swatches.at(-1)!.seconds;
  return curveAt(set, law, givenRate ?? bestRate(set, law, reference, weights));
}

/** The curve of slightly other readings: its rate is sought near that of the curve they differ from. */
export function refitted(curve: ShadeCurve, set: SwatchSet, givenRate?: number): ShadeCurve {
  const { law, ratePerSecond, referenceSeconds, weights } = curve;
  return curveAt(set, law, givenRate ?? bestRate(set, law, referenceSeconds, weights, ratePerSecond));
}

function curveAt(set: SwatchSet, law: LawName, rate: number): ShadeCurve {
  const weights = curveWeights(set.reading);
  const reference = set.swatches.at(-1)!.seconds;
  const { absorption, depths } = trial(set, law, rate, reference);
  const labs = depths.map((depth) => spectralLab(set.base.ks, absorption, depth, weights));
  return {
    law,
    ratePerSecond: rate,
    referenceSeconds: reference,
    absorption,
    weights,
    residual: residualOf(set, labs),
    set,
  };
}

/**
 * CIELAB after a time [s] in a fresh bath at the dye's temperature, on the swatches' base or on another whose
 * K/S is given. Beyond the longest swatch it is extrapolated: the residual is held.
 */
export function labAfter(curve: ShadeCurve, seconds: number, baseKs: Float64Array = curve.set.base.ks): Lab {
  const [L, a, b] = spectralLab(baseKs, curve.absorption, freshDepth(curve, seconds), curve.weights);
  const [dL, da, db] = curve.residual(seconds);
  return [L + dL, a + da, b + db];
}
