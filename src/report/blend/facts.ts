import { screenColour } from "../../core/colour/screen/screen-swatch.js";
import type { Lab, Reading } from "../../core/model/colour.js";
import type { Caution } from "../../core/plan/advice/cautions.js";
import type { Blend } from "../../core/recipe/blend/blend.js";
import type { ThroughOneTank } from "../../core/recipe/carry-over/through-one-tank.js";
import type { MixTrial } from "../../core/recipe/trial/fit-trials.js";

/** What `blend` found, and what it was asked. */
export interface BlendFacts {
  readonly blend: Blend;
  /** The target as typed, or the shade's name. */
  readonly name: string;
  readonly tolerance: number;
  readonly reading: Reading;
  readonly base: string | null;
  /** What is filled: "tank six"; null where it is the jar alone. */
  readonly vessel: string | null;
  readonly currency: string | null;
  readonly trials: readonly MixTrial[];
  /** Those that were typed. */
  readonly typedTrials: readonly string[];
  /** How many of the trials the batch file has, under the mix that the shade is dyed with; null where it has some that do not fit. */
  readonly fileTrials: number | null;
  readonly carryOver: ThroughOneTank | null;
  readonly cautions: readonly Caution[];
}

/** What a recipe rests on, and nothing checks but a trial. */
export const assumptions: readonly string[] = [
  "the dyes do not compete for places in the fibre: each goes in as if it were alone.",
];

export const hexOf = (lab: Lab, reading: Reading): string => screenColour(lab, reading).hex;
