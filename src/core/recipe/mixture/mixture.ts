import { xyzToLab } from "../../colour/cielab.js";
import { curveGrid } from "../../colour/spectrum/grid.js";
import { reflectanceOf } from "../../colour/spectrum/kubelka-munk.js";
import { type Weights, weighted } from "../../colour/spectrum/weights.js";
import type { Lab } from "../../model/batch.js";
import { uptakeAtStrength } from "../../uptake/law/isotherm.js";
import { freshSeconds } from "../../uptake/law/uptake-model.js";
import { type Correction, uncorrected } from "./correction.js";
import { depthOfDip, type RecipeDip } from "./depth-of-dip.js";
import type { MixDye } from "./mix-dye.js";
import { addedShares, mixedKs } from "./mixed-ks.js";

/** Some dyes in one bath, one dip, and what trials corrected: everything but how strong each dye is. */
export interface Mixture {
  readonly dyes: readonly MixDye[];
  readonly dip: RecipeDip;
  /** Depth that strength 1 of each dye gives, factors of trials in it. */
  readonly depthAtOne: readonly number[];
  readonly baseKs: Float64Array;
  /** K/S that depth 1 of each dye adds, and its mean over the wavelengths. */
  readonly absorptions: readonly Float64Array[];
  readonly meanAbsorptions: readonly number[];
  readonly weights: Weights;
  readonly correction: Correction;
}

/** The temperature of a bath of several dyes: the lowest of their own, so that none is heated over its own [°C]. */
export const mixedCelsius = (dyes: readonly MixDye[]): number =>
  Math.min(...dyes.map(({ model }) => model.dye.celsius));

/** Whether dyes have one temperature. */
export const oneTemperature = (dyes: readonly MixDye[]): boolean =>
  dyes.every(({ model }) => model.dye.celsius === dyes[0]!.model.dye.celsius);

/** Dyes of one reading in one bath; where their swatches' bases differ a little, the base is the mean of them. */
export function mixtureOf(
  dyes: readonly MixDye[],
  seconds: number,
  correction: Correction = uncorrected,
  celsius: number = mixedCelsius(dyes),
): Mixture {
  const dip = { seconds, celsius };
  const [first, ...more] = dyes;
  return {
    dyes,
    dip,
    depthAtOne: dyes.map(
      ({ model, name }) => depthOfDip(model.uptake, dip) * (correction.factors.get(name) ?? 1),
    ),
    baseKs:
      more.length === 0
        ? first!.baseKs
        : first!.baseKs.map((_, i) => dyes.reduce((sum, { baseKs }) => sum + baseKs[i]!, 0) / dyes.length),
    absorptions: dyes.map(({ model }) => model.chosen.curve.absorption),
    meanAbsorptions: dyes.map(({ meanAbsorption }) => meanAbsorption),
    weights: first!.model.chosen.curve.weights,
    correction,
  };
}

/** Depth of each dye at its strength. */
export const depthsAt = ({ dyes, depthAtOne }: Mixture, strengths: ArrayLike<number>): number[] =>
  dyes.map(({ model }, i) => depthAtOne[i]! * uptakeAtStrength(strengths[i]!, model.uptake.saturation));

/** K/S of the mixture at the wavelengths of the curves, written into `ks`. */
export const ksAt = (
  { baseKs, absorptions }: Mixture,
  depths: readonly number[],
  ks?: Float64Array,
): Float64Array => mixedKs(baseKs, absorptions, depths, ks);

/** A recipe takes tens of thousands of colours: what each is summed from is kept in one place. */
const scratchKs = new Float64Array(curveGrid.count);
const scratchCurve = new Float64Array(curveGrid.count);

/** CIELAB of a K/S under weights. */
export function ksLab(ks: Float64Array, weights: Weights): Lab {
  for (let i = 0; i < scratchCurve.length; i++) scratchCurve[i] = reflectanceOf(ks[i]!);
  return xyzToLab(weighted(scratchCurve, weights), weights.white);
}

/**
 * CIELAB of depths in a mixture: K/S = base + Σ A_i D_i; on the swatches' base Σ w_i² r_i is added, w_i the share of the
 * K/S that dye i adds and r_i what the dye's own curve misses at that depth; and the offset of the trials. With one dye it
 * is that dye's shade curve.
 */
export function labOfDepths(mixture: Mixture, depths: readonly number[]): Lab {
  const { dyes, weights } = mixture;
  const { offset } = mixture.correction;
  const [L, a, b] = ksLab(ksAt(mixture, depths, scratchKs), weights);
  const shares = addedShares(mixture.meanAbsorptions, depths);
  const lab: [number, number, number] = [L + offset[0], a + offset[1], b + offset[2]];
  dyes.forEach(({ model, ownBase }, i) => {
    if (!ownBase || shares[i] === 0) return;
    const { curve } = model.chosen;
    const missed = curve.residual(freshSeconds(curve, depths[i]!) ?? Number.POSITIVE_INFINITY);
    const weight = shares[i]! * shares[i]!;
    for (let axis = 0; axis < 3; axis++) lab[axis]! += weight * missed[axis]!;
  });
  return lab;
}

/** CIELAB of a mixed bath with dyes of these strengths. */
export const mixedLab = (mixture: Mixture, strengths: ArrayLike<number>): Lab =>
  labOfDepths(mixture, depthsAt(mixture, strengths));
