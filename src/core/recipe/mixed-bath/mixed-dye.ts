import { done, type Fault, failed, type Outcome } from "../../fault.js";
import { madeOnce } from "../../made-once.js";
import type { Dye, Handling, Mix } from "../../model/batch.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import type { FittedDyes } from "../../uptake/shade/fitted-dyes.js";
import { type Correction, uncorrected } from "../mixture/correction.js";
import { mixDyes } from "../mixture/mix-dye.js";
import { fitTrials, type MixTrial } from "../trial/fit-trials.js";
import { trialsOfMix } from "./trials-of-mix.js";

/** What is known of a mix before the bath is looked at. */
export interface MixedDye {
  /** Taken for the mix where a function needs the model of one dye; it has no curve. */
  readonly model: DyeModel;
  readonly dye: Dye & { readonly mix: Mix };
  readonly parts: readonly DyeModel[];
  /** Of each part, relative to its own fresh bath. */
  readonly strengths: readonly number[];
  readonly correction: Correction;
  readonly trials: readonly MixTrial[];
}

export const isMix = (dye: Dye): dye is Dye & { readonly mix: Mix } => dye.mix !== undefined;

/** So slow that uptake goes with time and strength, whatever the times. */
const slow = 1e-9;

/** Advice on slower dips and weaker baths takes a mix for a film through which uptake goes with time and strength. */
const standIn = (dye: Dye, parts: readonly DyeModel[], { longestSeconds }: Handling): DyeModel => ({
  dye,
  uptake: {
    law: "first-order",
    ratePerSecond: slow,
    referenceSeconds: Math.min(...parts.map(({ uptake }) => uptake.referenceSeconds)),
    referenceCelsius: dye.celsius,
    activationEnergyJPerMol: dye.activationEnergyJPerMol,
  },
  longestSeconds,
  chosen: null,
  onlySwatch: null,
  response: {},
  rate: "given",
});

/** Mixes that are kept; a workshop has a few. */
const mostMixes = 64;

/** Mixes with what their trials corrected, each fitted once. */
export class FittedMixes {
  private readonly corrections = new Map<string, Correction>();

  fit(dye: MixedDye["dye"], handling: Handling, dyes: FittedDyes): Outcome<MixedDye> {
    const fitted = dye.mix.parts.map((part) => dyes.fit(part.dye, handling));
    const faults: Fault[] = fitted.flatMap((fit) => fit.faults);
    const parts = fitted.flatMap((fit) => (fit.ok ? [fit.value.model] : []));
    if (parts.length < fitted.length) return failed(...faults);
    const mixed = mixDyes(parts, dye.base);
    if (!mixed.ok) return failed(...faults, ...mixed.faults);
    const trials = trialsOfMix(dye, mixed.value);
    if (!trials.ok) return failed(...faults, ...trials.faults);
    const key = JSON.stringify([dye.mix, dye.base, dye.celsius, handling.timingSeconds]);
    const correction =
      trials.value.length === 0
        ? uncorrected
        : madeOnce(this.corrections, key, mostMixes, () => fitTrials(trials.value));
    return done(
      {
        model: standIn(dye, parts, handling),
        dye,
        parts,
        strengths: dye.mix.parts.map(({ strength }) => strength),
        correction,
        trials: trials.value,
      },
      faults,
    );
  }
}
