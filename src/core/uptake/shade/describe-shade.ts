import { screenColour } from "../../colour/screen/screen-swatch.js";
import { done, type Fault, type Outcome, warning } from "../../fault.js";
import type { Dye, Handling, Lab, LawName } from "../../model/batch.js";
import { equivalentSeconds } from "../law/dip-time.js";
import { madeUpStrength } from "../law/measured-at.js";
import { slowing } from "../law/slowing.js";
import { freshDepth, type UptakeModel } from "../law/uptake-model.js";
import type { ChosenCurve, LeaveOneOut } from "../swatches/choose-law.js";
import { labAfter } from "../swatches/shade-curve.js";
import type { DyedSwatch } from "../swatches/swatch-curves.js";
import { otherBase } from "./aim.js";
import { type DyeModel, dyeModel, hasCurve, withEveryLaw } from "./dye-model.js";
import { type MovedBase, movedBase } from "./moved-base.js";
import { measuredBath, type ShadeBath } from "./shade-bath.js";
import { type ShadeTime, type ShadeWish, shadeTime } from "./shade-time.js";
import { offCurveFrom, type TriedUptake } from "./trial.js";
import { triedUptake } from "./tried-uptake.js";

/** One point of a shade curve. Beyond the longest swatch it is extrapolated. */
export interface ShadePoint {
  readonly seconds: number;
  readonly depth: number;
  readonly lab: Lab;
  readonly hex: string;
  readonly extrapolated: boolean;
}

/** A figure that the swatches tell with its standard error, or that is assumed. */
export interface Known {
  readonly value: number;
  readonly standardError: number | null;
  readonly measured: boolean;
}

export interface ShadeDescription {
  readonly dye: string;
  readonly law: LawName;
  readonly ratePerSecond: number;
  readonly rateFrom: DyeModel["rate"];
  /** p of t(s) = t(1) s^-p; where it is not measured, that of half strength at the target or the middle of the curve. */
  readonly strengthExponent: Known;
  readonly activationEnergyKJPerMol: Known;
  /** On all times of the dye, from the bath log; 1 without one. */
  readonly timeFactor: number;
  readonly referenceSeconds: number;
  readonly strength: number;
  readonly celsius: number;
  /** The bath has the temperature that the swatches were dyed at. */
  readonly ownTemperature: boolean;
  readonly base: string | null;
  /** On another base than the swatches'. */
  readonly estimated: boolean;
  readonly swatches: readonly { readonly seconds: number; readonly lab: Lab; readonly hex: string }[];
  readonly leaveOneOut: { readonly median: number; readonly max: number } | null;
  readonly tried: readonly LeaveOneOut[];
  /** What a trial dip in the bath says: the factor on all times, and how far its colour is from the dye's curve. */
  readonly trial: { readonly seconds: number; readonly factor: number; readonly deltaE00: number } | null;
  /** Where the base is no longer the one that the swatches were dyed on. */
  readonly movedBase: MovedBase | null;
  /** One point only where there is one swatch. */
  readonly curve: readonly ShadePoint[];
  /** The same at even steps, for drawing. */
  readonly drawn: readonly ShadePoint[];
  readonly target: ShadeTime | null;
}

const drawnSteps = 100;
const marks = [5, 10, 15, 20, 30, 45, 60, 75, 90, 120, 150, 180, 240, 300, 420, 600, 900, 1200, 1800];

/** Times that a curve is printed at: round ones up to the longest, the swatches' own, and the longest. */
function printedTimes(swatches: readonly number[], longest: number): number[] {
  const last = swatches.reduce((most, t) => Math.max(most, t), longest);
  return [...new Set([...marks.filter((t) => t < last), ...swatches, last])].sort((a, b) => a - b);
}

function trialFaults(dye: Dye, tried: TriedUptake | undefined): Fault[] {
  if (tried === undefined || tried.deltaE00 <= offCurveFrom) return [];
  return [
    warning(
      "trial-off-curve",
      ["dyes", dye.name],
      `the colour of the trial is ${tried.deltaE00.toFixed(1)} CIEDE2000 from any that dye "${dye.name}" gives`,
      "read it again dry and under the swatches' light; a bath that took up dirt or another dye gives such colours",
    ),
  ];
}

/**
 * The shade curve of a dye in a bath as it is, and the time for a wish in it; null for a dye that has a rate and
 * no swatches.
 */
export function describeShade(
  dye: Dye,
  handling: Handling,
  bath: ShadeBath,
  wish?: ShadeWish,
): Outcome<ShadeDescription | null> {
  const read = dyeModel(dye, handling, withEveryLaw);
  if (!read.ok) return read;
  const model = read.value;
  const { chosen, onlySwatch, rate } = model;
  const known = chosen?.curve.set.swatches ?? (onlySwatch ? [onlySwatch] : undefined);
  if (known === undefined) return done(null, read.faults);
  const other = otherBase(model, bath.base);
  if (!other.ok) return other;
  const tried = triedUptake(model, bath);
  if (!tried.ok) return tried;
  const uptake = tried.value?.uptake ?? model.uptake;
  const hex = (lab: Lab): string => screenColour(lab, dye.reading).hex;
  const timed = wish === undefined ? done(null) : shadeTime(model, handling, bath, wish, hex, tried.value);
  if (!timed.ok) return timed;
  const points = hasCurve(model)
    ? curvePoints(model, uptake, bath, other.value, hex)
    : () => onlyPoint(uptake, bath, onlySwatch!, hex);
  const longest = Math.max(handling.longestSeconds, uptake.referenceSeconds);
  const own = chosen?.tried.find(({ law }) => law === uptake.law);
  const times = printedTimes(
    known.map(({ seconds }) => seconds),
    longest,
  );
  return done(
    {
      dye: dye.name,
      law: uptake.law,
      ratePerSecond: uptake.ratePerSecond,
      rateFrom: rate,
      strengthExponent: knownExponent(model, timed.value),
      activationEnergyKJPerMol: knownEnergy(model),
      timeFactor: model.uptake.timeFactor ?? 1,
      referenceSeconds: uptake.referenceSeconds,
      strength: bath.strength,
      celsius: bath.celsius,
      ownTemperature: bath.celsius === uptake.referenceCelsius && madeUpStrength(dye) === 1,
      base: (bath.base ?? dye.base)?.name ?? null,
      estimated: other.value !== undefined,
      swatches: known.map(({ seconds, lab }) => ({ seconds, lab, hex: hex(lab) })),
      leaveOneOut: own ? { median: own.median, max: own.max } : null,
      tried: chosen?.tried ?? [],
      trial: tried.value
        ? {
            seconds: tried.value.trial.seconds,
            factor: tried.value.factor,
            deltaE00: tried.value.deltaE00,
          }
        : null,
      movedBase: hasCurve(model) ? movedBase(model, uptake, bath, wish?.tolerance) : null,
      curve: points(times),
      drawn: hasCurve(model)
        ? points(Array.from({ length: drawnSteps + 1 }, (_, i) => (longest * i) / drawnSteps))
        : [],
      target: timed.value,
    },
    [...read.faults, ...trialFaults(dye, tried.value), ...timed.faults],
  );
}

/** Points of the curve in the bath at those times. */
const curvePoints =
  (
    model: DyeModel & { readonly chosen: ChosenCurve },
    uptake: UptakeModel,
    bath: ShadeBath,
    baseKs: Float64Array | undefined,
    hex: (lab: Lab) => string,
  ) =>
  (times: readonly number[]): ShadePoint[] =>
    times.map((seconds) => {
      const fresh = equivalentSeconds(uptake, { seconds, ...measuredBath(model, bath) });
      const lab = labAfter(model.chosen.curve, fresh, baseKs);
      return {
        seconds,
        depth: freshDepth(uptake, fresh),
        lab,
        hex: hex(lab),
        extrapolated: fresh > uptake.referenceSeconds * (1 + 1e-9),
      };
    });

/** The one point that one swatch tells; none in another bath than its own. */
function onlyPoint(
  uptake: UptakeModel,
  { strength, celsius }: ShadeBath,
  { seconds, lab }: DyedSwatch,
  hex: (lab: Lab) => string,
): ShadePoint[] {
  if (strength !== 1 || celsius !== uptake.referenceCelsius) return [];
  return [{ seconds, depth: 1, lab, hex: hex(lab), extrapolated: false }];
}

function knownExponent({ uptake, response, dye }: DyeModel, target: ShadeTime | null): Known {
  const measured = response.strengthExponent;
  if (measured !== undefined && dye.strengthExponent === undefined) return { ...measured, measured: true };
  const fresh = target === null ? uptake.referenceSeconds / 3 : uptake.referenceSeconds * target.depth;
  const value = uptake.strengthExponent ?? Math.log2(slowing(uptake, fresh, 0.5));
  return { value, standardError: null, measured: false };
}

function knownEnergy({ uptake, response }: DyeModel): Known {
  const measured = response.activationEnergyJPerMol;
  return {
    value: uptake.activationEnergyJPerMol / 1000,
    standardError: measured === undefined ? null : measured.standardError / 1000,
    measured: measured !== undefined,
  };
}
