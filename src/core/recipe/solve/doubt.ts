import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { halfWidth95 } from "../../maths/sampling/half-width-95.js";
import { type Mixture, mixedLab } from "../mixture/mixture.js";
import { changesBy, withChanges } from "./changes.js";

/** What a mixture foretells is off by so much of each dye's strength, and by so much beside it [CIEDE2000]. */
const strengthShare = 0.3;
const beside = 0.5;

/** The same of a recipe near one that was tried: a share of the step from it, and the reading of the trial. */
const stepShare = 0.25;
const besideTried = 0.4;

/** A mixed bath whose colour was read. */
export interface Tried {
  /** Strength of each dye by name. */
  readonly strengths: ReadonlyMap<string, number>;
}

/**
 * 95 % doubt of a mixture's colour before any trial: 1.96 √(Σ (change by 30 % of strength)² + 0.5²) [CIEDE2000]. From a
 * simulation with invented dyes that compete for places and reflect light at their surface.
 */
export const firstDoubt95 = (mixture: Mixture, strengths: readonly number[]): number =>
  halfWidth95 * withChanges(beside, changesBy(mixture, strengths, strengthShare));

/**
 * The same after trials: 25 % of the step from the nearest trial in place of 30 % of the whole strength, since the trials
 * corrected the rest; a recipe that was tried as it is keeps 0.4.
 */
export function triedDoubt95(
  mixture: Mixture,
  strengths: readonly number[],
  tried: readonly Tried[],
): number {
  const lab = mixedLab(mixture, strengths);
  const doubts = tried.map(({ strengths: before }) =>
    withChanges(
      besideTried,
      mixture.dyes.map(({ name }, i) => {
        const step = strengths[i]! - (before.get(name) ?? 0);
        const at = strengths.with(i, Math.max(0, strengths[i]! + stepShare * step));
        return ciede2000(lab, mixedLab(mixture, at));
      }),
    ),
  );
  return halfWidth95 * Math.min(...doubts);
}
