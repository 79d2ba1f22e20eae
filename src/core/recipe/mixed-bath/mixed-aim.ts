import type { MixedAim, MixedStrengths } from "../../bath/load/mixed-dip.js";
import { done, type Outcome } from "../../fault.js";
import { exactSum } from "../../maths/exact-sum.js";
import type { Base, Shade } from "../../model/batch.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";
import { beyondSwatches, type LabAt, nearestOn, slopeOn, windowOn } from "../../uptake/shade/find-time.js";
import { dyedColour } from "../../uptake/swatches/swatch-curves.js";
import { depthOfDip } from "../mixture/depth-of-dip.js";
import { mixDyes } from "../mixture/mix-dye.js";
import { labOfDepths, type Mixture, mixtureOf } from "../mixture/mixture.js";
import type { MixedDye } from "./mixed-dye.js";
import { wearingDepth } from "./wearing-depth.js";

/** What a shade asks of a mixed bath: as of any, and what follows from the colours of its dyes. */
export interface MixedShadeAim extends ShadeAim {
  /** The dip for each load, which depends on how strong each dye is then. */
  readonly mixed: MixedAim;
  readonly mixture: Mixture;
  /** Colours in a fresh bath, and with a part of some colour as the base. */
  readonly labAt: LabAt;
  readonly over: (partKs: Float64Array) => LabAt;
}

/** Depth of each dye after a time in a bath of these strengths. */
function mixedDepths(
  { mixture, strengths }: { readonly mixture: Mixture; readonly strengths: readonly number[] },
  { before, halfSpent }: MixedStrengths,
  seconds: number,
): number[] {
  const { dyes, dip, correction } = mixture;
  return dyes.map(({ model: { uptake }, name }, i) => {
    const atOne = depthOfDip(uptake, { seconds, celsius: dip.celsius }) * (correction.factors.get(name) ?? 1);
    return wearingDepth(atOne, strengths[i]! * before[i]!, halfSpent[i]!, uptake.saturation);
  });
}

/** The aim of a shade of a mix, on a base. */
export function aimAtMix(mixed: MixedDye, shade: Shade, base: Base | undefined): Outcome<MixedShadeAim> {
  const { dye, model, parts, strengths, correction } = mixed;
  const { target, tolerance } = shade;
  const on = mixDyes(parts, base ?? dye.base);
  if (!on.ok) return on;
  const mixture = mixtureOf(on.value, model.longestSeconds, correction, dye.celsius);
  const labOn =
    (of: Mixture, bath: MixedStrengths): LabAt =>
    (seconds) =>
      labOfDepths(of, mixedDepths({ mixture: of, strengths }, bath, seconds));
  const labIn = (bath: MixedStrengths): LabAt => labOn(mixture, bath);
  const fresh: MixedStrengths = { before: strengths.map(() => 1), halfSpent: strengths.map(() => 0) };
  const freshLab = labIn(fresh);
  const wanted =
    target.kind === "colour"
      ? dyedColour(target.colour, dye.reading, ["shades", shade.name])
      : done({ lab: freshLab(target.seconds) });
  if (!wanted.ok) return wanted;
  const { lab } = wanted.value;
  const longest = Math.max(
    model.longestSeconds,
    model.uptake.referenceSeconds,
    target.kind === "colour" ? 0 : target.seconds,
  );
  const met =
    target.kind === "colour"
      ? nearestOn(freshLab, lab, tolerance, longest)
      : {
          seconds: target.seconds,
          lab,
          deltaE00: 0,
          window: windowOn(freshLab, { seconds: target.seconds, target: lab }, tolerance, longest),
        };
  const reachable = met.window !== null;
  const uptakes = dye.mix.parts.map((part) => part.dye.uptakePerDm2);
  const depths = mixedDepths({ mixture, strengths }, fresh, met.seconds);
  return done({
    depth: exactSum(depths.map((depth, i) => depth * uptakes[i]!)) / dye.uptakePerDm2,
    freshSeconds: met.seconds,
    lab: met.lab,
    deltaE00: met.deltaE00,
    freshWindow: met.window,
    slopePerFreshSecond: slopeOn(freshLab, met.seconds),
    reachable,
    extrapolated: met.seconds > model.uptake.referenceSeconds * (1 + 1e-9),
    estimated: on.value.some(({ ownBase }) => !ownBase),
    mixture,
    labAt: freshLab,
    over: (baseKs) => {
      const dyes = on.value.map((one) => ({ ...one, baseKs, ownBase: false }));
      return labOn({ ...mixture, dyes, baseKs }, fresh);
    },
    mixed: (bath) => {
      const labAt = labIn(bath);
      const found = nearestOn(labAt, lab, Number.NEGATIVE_INFINITY, beyondSwatches * longest, coarse);
      const { seconds, deltaE00 } = found;
      return {
        seconds,
        depths: mixedDepths({ mixture, strengths }, bath, seconds),
        lab: found.lab,
        deltaE00,
        onShade: deltaE00 <= tolerance || !reachable,
        window: () =>
          deltaE00 > tolerance
            ? null
            : windowOn(labAt, { seconds, target: lab }, tolerance, beyondSwatches * longest),
        slopePerSecond: () => slopeOn(labAt, seconds),
      };
    },
  });
}

/** Places looked at before the nearest one is refined: a life is ten thousand dips. */
const coarse = 24;
