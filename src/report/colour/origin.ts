import type { Reading } from "../../core/model/colour.js";

/** Where a colour came from. */
export interface Origin {
  /** As it was typed. */
  readonly given: string;
  /** What it was read under, where that is not what it is reported under. */
  readonly carriedFrom?: Reading;
}
