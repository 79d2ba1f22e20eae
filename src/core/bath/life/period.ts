import type { BathState } from "../load/bath-state.js";
import { addedTotals, type LifeTotals } from "./life-totals.js";

/** A stretch of repetitions after which a bath is again, to the last bit, what it was. */
export interface Period {
  readonly repeats: number;
  /** Loads finished before the stretch. */
  readonly fromLoad: number;
  readonly perRound: LifeTotals;
}

const isSame = (one: BathState, other: BathState): boolean =>
  one.dye === other.dye &&
  one.volumeL === other.volumeL &&
  (one.dyeEach?.every((dye, i) => dye === other.dyeEach![i]) ?? true);

/**
 * Watches the states in which repetitions begin and tells when one comes back. The state kept for comparison is
 * exchanged at each power of two (Brent's way of finding a cycle), so a period is found within about three times
 * its length after it begins.
 * @source brent1980
 */
export function periodFinder(): (
  state: BathState,
  repeats: number,
  totals: LifeTotals,
) => Period | undefined {
  let kept: { readonly state: BathState; readonly repeats: number; readonly totals: LifeTotals } | undefined;
  let next = 1;
  return (state, repeats, totals) => {
    if (kept !== undefined && isSame(state, kept.state))
      return {
        repeats: repeats - kept.repeats,
        fromLoad: kept.totals.loads,
        perRound: addedTotals(totals, kept.totals, -1),
      };
    if (kept === undefined || repeats >= next) {
      kept = {
        state: { volumeL: state.volumeL, dye: state.dye, dyeEach: state.dyeEach },
        repeats,
        totals: { ...totals },
      };
      next = 2 * Math.max(1, repeats);
    }
    return undefined;
  };
}
