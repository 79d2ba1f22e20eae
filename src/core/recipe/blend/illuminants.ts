import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { curveWeights } from "../../colour/spectrum/weights.js";
import type { IlluminantName } from "../../model/batch.js";
import { freshDepth } from "../../uptake/law/uptake-model.js";
import type { WithCurve } from "../../uptake/shade/dye-model.js";
import { mixedKs } from "../mixture/mixed-ks.js";
import { depthsAt, ksAt, ksLab, type Mixture } from "../mixture/mixture.js";

/** The other light that a match is looked at in: a lamp with a filament, and a shop's tubes. */
const otherIlluminants = ["A", "F11"] as const satisfies readonly IlluminantName[];

/** K/S of the colour that a time gives in a dye's own fresh bath. */
export function ksAfter({ chosen: { curve } }: WithCurve, seconds: number): Float64Array {
  const swatch = curve.set.swatches.find((one) => one.seconds === seconds);
  return swatch?.ks ?? mixedKs(curve.set.base.ks, [curve.absorption], [freshDepth(curve, seconds)]);
}

/** Differences to a target [CIEDE2000] under other illuminants, from K/S of both, without what single dyes' curves miss. */
export function deltaE00ByIlluminant(
  mixture: Mixture,
  strengths: readonly number[],
  targetKs: Float64Array,
): Record<(typeof otherIlluminants)[number], number> {
  const ks = ksAt(mixture, depthsAt(mixture, strengths));
  const { observer } = mixture.dyes[0]!.model.dye.reading;
  const under = (illuminant: IlluminantName): number => {
    const weights = curveWeights({ illuminant, observer });
    return ciede2000(ksLab(targetKs, weights), ksLab(ks, weights));
  };
  return { A: under("A"), F11: under("F11") };
}
