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
  /** The same as they were typed. */
  readonly typedTrials: readonly string[];
  /** How many trials the batch file has of the mix that the shade is dyed with. */
  readonly fileTrials: number;
  readonly carryOver: ThroughOneTank | null;
  readonly cautions: readonly Caution[];
}

/** What a recipe rests on, and nothing checks but a trial. */
export const assumptions: readonly string[] = [
  "the dyes do not compete for places in the fibre: each goes in as if it were alone.",
];

export const hexOf = (lab: Lab, reading: Reading): string => screenColour(lab, reading).hex;
