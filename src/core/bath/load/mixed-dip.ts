import type { Lab } from "../../model/batch.js";

/** A dip in a bath of several dyes: the time whose colour is nearest to the shade, as strong as each dye is now. */
export interface MixedDip {
  /** At the bath's own temperature. */
  readonly seconds: number;
  /** Depth that each dye takes [-]. */
  readonly depths: readonly number[];
  readonly lab: Lab;
  /** From the shade; it grows as the dyes wear unequally. */
  readonly deltaE00: number;
  /** The bath still gives the shade as well as a fresh one does, or within its tolerance. */
  readonly onShade: boolean;
  /** Times within the shade's tolerance at the bath's own temperature, the far end null where it is never left. */
  readonly window: () => readonly [number, number | null] | null;
  /** CIEDE2000 per second at the end of the dip. */
  readonly slopePerSecond: () => number;
}

/** Each dye of a mixed bath as a load meets it. */
export interface MixedStrengths {
  /** Before the dip, 1 as made up [-]. */
  readonly before: readonly number[];
  /** Share of the dye in the bath that the load takes up at depth 1, halved: the strength that counts is the mean of before and after [-]. */
  readonly halfSpent: readonly number[];
}

/** Finds the dip for a load of one shade. */
export type MixedAim = (strengths: MixedStrengths) => MixedDip;
