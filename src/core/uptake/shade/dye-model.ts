import { done, error, failed, type Outcome } from "../../fault.js";
import type { Dye, Handling, LawName } from "../../model/batch.js";
import { measuredCelsius } from "../law/measured-at.js";
import type { UptakeModel } from "../law/uptake-model.js";
import { type ApartDip, type BathResponse, bathResponse } from "../swatches/bath-response.js";
import { type ChosenCurve, chooseCurve } from "../swatches/choose-law.js";
import { type DyedSwatch, type SwatchSet, swatchSet } from "../swatches/swatch-curves.js";
import { beyondSwatches, nearestTime } from "./find-time.js";
import { doubtCurves, readDeviation } from "./fresh-doubt.js";

/** What is known of a dye before the bath is looked at. */
export interface DyeModel {
  readonly dye: Dye;
  readonly uptake: UptakeModel;
  /** The longest dip that is done: colours are sought up to it, extrapolated beyond the longest swatch. */
  readonly longestSeconds: number;
  /** Null where the dye has fewer than two swatches to tell its colours. */
  readonly chosen: ChosenCurve | null;
  /** The one swatch of a dye that has no other: its colour is all that is known. */
  readonly onlySwatch: DyedSwatch | null;
  /** How it answers to a weaker or cooler bath, as far as swatches tell. */
  readonly response: BathResponse;
  /** What the rate rests on. */
  readonly rate: "given" | "fitted" | "assumed";
}

/** A dye whose colours are known: it has two swatches or more. */
export type WithCurve = DyeModel & { readonly chosen: ChosenCurve };
export const hasCurve = (model: DyeModel): model is WithCurve => model.chosen !== null;

/** The two steps of a dye's model that take long, so that they can be done once for many batches. */
export interface DyeWork {
  readonly setOf: (dye: Dye) => Outcome<SwatchSet>;
  readonly choose: (dye: Dye, set: SwatchSet, handling: Handling) => ChosenDye;
}

/** The curve of a dye, and its swatches from other baths beside the fresh times that give their colours. */
export interface ChosenDye {
  readonly chosen: ChosenCurve;
  readonly apart: readonly ApartDip[];
}

const afresh: DyeWork = { setOf: swatchSet, choose: chooseForDye };

/** For a model that shows the errors of all laws. */
export const withEveryLaw: DyeWork = {
  setOf: swatchSet,
  choose: (dye, set, handling) => chooseForDye(dye, set, handling, true),
};

/**
 * How a dye goes in and what colours it gives: law and rate fitted to its swatches, or as given. A dye with
 * neither a rate nor swatches is a fault.
 */
export function dyeModel(
  dye: Dye,
  handling: Handling,
  { setOf, choose }: DyeWork = afresh,
): Outcome<DyeModel> {
  if (dye.mix !== undefined)
    return failed(
      error(
        "mixed-dye",
        ["dyes", dye.name],
        `dye "${dye.name}" is a mix, which has no shade curve of its own`,
        `take one of its dyes: ${dye.mix.parts.map((part) => part.dye.name).join(", ")}`,
      ),
    );
  const common = {
    referenceCelsius: measuredCelsius(dye),
    ...(dye.saturation === undefined ? {} : { saturation: dye.saturation }),
    ...(dye.strengthExponent === undefined ? {} : { strengthExponent: dye.strengthExponent }),
    ...(dye.timeFactor === undefined ? {} : { timeFactor: dye.timeFactor }),
    activationEnergyJPerMol: dye.activationEnergyJPerMol,
  };
  const longestSeconds = handling.longestSeconds;
  if (dye.swatches.length === 0) {
    if (dye.ratePerSecond === undefined)
      return failed(
        error(
          "no-rate",
          ["dyes", dye.name],
          `dye "${dye.name}" has neither swatches nor a rate: nothing says how long it takes`,
          "add swatches: - { time: 60 s, lab: [65.9, 44.6, 23.0] }, or rate: 0.012 /s",
        ),
      );
    return done({
      dye,
      uptake: {
        law: uncheckedLaw(dye),
        ratePerSecond: dye.ratePerSecond,
        referenceSeconds: longestSeconds,
        ...common,
      },
      longestSeconds,
      chosen: null,
      onlySwatch: null,
      response: {},
      rate: "given",
    });
  }
  const set = setOf(dye);
  if (!set.ok) return set;
  const [onlySwatch, ...more] = set.value.swatches;
  if (more.length === 0) {
    const { seconds } = onlySwatch!;
    return done(
      {
        dye,
        uptake: {
          law: uncheckedLaw(dye),
          ratePerSecond: dye.ratePerSecond ?? assumedProgress / seconds,
          referenceSeconds: seconds,
          ...common,
        },
        longestSeconds,
        chosen: null,
        onlySwatch: onlySwatch!,
        response: {},
        rate: dye.ratePerSecond === undefined ? "assumed" : "given",
      },
      set.faults,
    );
  }
  const { chosen, apart } = choose(dye, set.value, handling);
  const { law, ratePerSecond, referenceSeconds } = chosen.curve;
  const response = bathResponse(
    apart,
    measuredCelsius(dye),
    dye.activationEnergyJPerMol,
    !dye.activationEnergyAssumed,
  );
  const { strengthExponent, activationEnergyJPerMol } = response;
  return done(
    {
      dye,
      uptake: {
        law,
        ratePerSecond,
        referenceSeconds,
        ...common,
        ...(strengthExponent && dye.strengthExponent === undefined
          ? { strengthExponent: strengthExponent.value }
          : {}),
        ...(activationEnergyJPerMol ? { activationEnergyJPerMol: activationEnergyJPerMol.value } : {}),
      },
      longestSeconds,
      chosen,
      onlySwatch: null,
      response,
      rate: dye.ratePerSecond === undefined ? "fitted" : "given",
    },
    set.faults,
  );
}

/** With fewer than two swatches nothing checks the law: the simplest, or the one that is given. */
const uncheckedLaw = ({ law }: Dye): LawName => (law === "auto" ? "first-order" : law);

/** The curve that a dye's swatches give, and what its swatches from other baths say. */
export function chooseForDye(dye: Dye, set: SwatchSet, handling: Handling, everyLaw = false): ChosenDye {
  const chosen = chooseCurve(set, dye.law, dye.ratePerSecond, everyLaw);
  return { chosen, apart: set.apart.length === 0 ? [] : apartDips(dye, chosen, set.apart, handling) };
}

/** Swatches from other baths with their times in a fresh bath, and the doubt of each. */
export function apartDips(
  dye: Dye,
  chosen: ChosenCurve,
  apart: SwatchSet["apart"],
  { timingSeconds }: Handling,
  curves = doubtCurves(chosen, { timingSeconds, givenRate: dye.ratePerSecond }),
): ApartDip[] {
  const { curve } = chosen;
  return apart.map(({ lab, seconds, strength, celsius }) => {
    const { seconds: fresh } = nearestTime(curve, lab, 0, undefined, beyondSwatches * curve.referenceSeconds);
    const deviation = readDeviation(curves, { lab, seconds, freshSeconds: fresh }, timingSeconds);
    return { seconds, strength, celsius, freshSeconds: fresh, deviation };
  });
}

/** With one swatch nothing tells how fast the dye goes in: k t of that swatch is then taken as this. */
const assumedProgress = 2;

/** What `rate: "assumed"` rests on, in words. */
export const assumedRateText = `k t = ${assumedProgress} at the only swatch`;
