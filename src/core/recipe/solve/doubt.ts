import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { halfWidth95 } from "../../maths/sampling/half-width-95.js";
import { isMeasured } from "../mixture/is-measured.js";
import { type Mixture, mixedLab } from "../mixture/mixture.js";
import { changesBy, withChanges } from "./changes.js";

/**
 * How far a mixture is off what is foretold of it, one standard deviation: by a share of each dye's strength, and by a
 * difference beside it [CIEDE2000]; after trials by a share of the step from the nearest one.
 */
interface Uncertainty {
  readonly strengthShare: number;
  readonly beside: number;
  readonly stepShare: number;
  readonly besideTried: number;
}

/**
 * From a simulation with invented dyes that compete for places and reflect light at their surface, in which each is held
 * in 95 to 98 of 100 cases. A smoothest curve is not the dye's own, so that the readings of a colorimeter foretell less.
 */
const fromLab: Uncertainty = { strengthShare: 0.22, beside: 0.5, stepShare: 0.25, besideTried: 0.4 };
const fromReflectance: Uncertainty = { strengthShare: 0.18, beside: 0.5, stepShare: 0.2, besideTried: 0.3 };

const uncertaintyOf = ({ dyes }: Mixture): Uncertainty =>
  dyes.every(({ model, ownBase }) => ownBase && isMeasured(model.dye)) ? fromReflectance : fromLab;

/** A mixed bath whose colour was read. */
export interface Tried {
  /** Strength of each dye by name. */
  readonly strengths: ReadonlyMap<string, number>;
}

/**
 * 95 % doubt of a mixture's colour before any trial: 1.96 √(Σ (change by 22 % of strength)² + 0.5²) [CIEDE2000], by 18 %
 * where every dye's reflectance was measured on this base.
 */
export function firstDoubt95(mixture: Mixture, strengths: readonly number[]): number {
  const { strengthShare, beside } = uncertaintyOf(mixture);
  return halfWidth95 * withChanges(beside, changesBy(mixture, strengths, strengthShare));
}

/**
 * The same after trials: 25 % of the step from the nearest trial, with measured reflectance 20 %, in place of the share of
 * the whole strength, since the trials corrected the rest; a recipe that was tried as it is keeps 0.4, or 0.3.
 */
export function triedDoubt95(
  mixture: Mixture,
  strengths: readonly number[],
  tried: readonly Tried[],
): number {
  const { stepShare, besideTried } = uncertaintyOf(mixture);
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
