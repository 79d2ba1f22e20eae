import type { Lab } from "../../model/batch.js";

/** What trials of mixed baths corrected: a factor on each dye's depth, and an offset of the colour [CIELAB]. */
export interface Correction {
  readonly factors: ReadonlyMap<string, number>;
  readonly offset: Lab;
}

/** Before any trial. */
export const uncorrected: Correction = { factors: new Map(), offset: [0, 0, 0] };
