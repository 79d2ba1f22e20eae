import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { findRoot } from "../../maths/root.js";
import type { Lab } from "../../model/batch.js";
import { equivalentSeconds } from "../law/dip-time.js";
import type { UptakeModel } from "../law/uptake-model.js";
import { labAfter, type ShadeCurve } from "../swatches/shade-curve.js";

/** A dip as it is meant to be. */
export interface MeantDip {
  readonly seconds: number;
  readonly strength: number;
  readonly celsius: number;
}

/** How far one thing may be off, the others being right, before the shade leaves its tolerance; null: further than was looked. */
export interface Hold {
  readonly less: number | null;
  readonly more: number | null;
  /** The smaller of the two: hold it to plus or minus this. */
  readonly within: number | null;
}

/** What one thing does to the shade: CIEDE2000 per unit of it, and what it must be held to. */
export interface Influence {
  readonly perUnit: number;
  readonly hold: Hold;
}

/** Units: seconds, °C, per cent of the strength, mL of concentrate or g of powder at make-up. */
export interface Sensitivity {
  readonly seconds: Influence;
  readonly celsius: Influence;
  readonly strengthPercent: Influence;
  readonly makeUpDye: Influence;
}

/** How far each thing is varied in search of the end of the tolerance. */
const furthest = { celsius: 30, strengthPercent: 100 } as const;
/** Doublings of the step from the dip to the furthest. */
const doublings = 14;

/**
 * CIEDE2000 that a dip's shade moves per second, per °C, per cent of strength and per mL or g at make-up, by
 * central differences, and how far each may be off before the shade leaves its tolerance.
 *
 * The colour follows from the depth that the altered dip gives, at its own time: nobody corrects for an error he
 * does not see. An error of x at make-up changes the strength by the share x/N, N the dye of the make-up. The
 * distance is that to `target`, or where absent to the colour of the dip as meant; searched to a dip of no time and
 * of four times the time, 30 °C and 100 % of the strength away.
 */
export function sensitivity(shade: {
  readonly curve: ShadeCurve;
  readonly model: UptakeModel;
  readonly dip: MeantDip;
  /** CIEDE2000. */
  readonly tolerance: number;
  readonly target?: Lab;
  /** mL of concentrate or g of powder in the fresh bath. */
  readonly makeUpDye: number;
  /** Of another base than the swatches'. */
  readonly baseKs?: Float64Array;
}): Sensitivity {
  const { dip, tolerance } = shade;
  const meant = colourOf(shade, dip);
  const target = shade.target ?? meant;
  const influence = (vary: (by: number) => MeantDip, step: number, less: number, more: number): Influence => {
    const at = (by: number): Lab => colourOf(shade, vary(by));
    const off = (by: number): number => ciede2000(at(by), target) - tolerance;
    const [low, high] = [edge(off, -less), edge(off, more)];
    return {
      perUnit: slope(at, Math.min(step, less), step),
      hold: { less: low, more: high, within: smaller(low, high) },
    };
  };
  const { seconds, strength, celsius } = dip;
  const strengthInfluence = influence(
    (by) => ({ ...dip, strength: strength * (1 + by / 100) }),
    0.1,
    furthest.strengthPercent,
    furthest.strengthPercent,
  );
  return {
    seconds: influence(
      (by) => ({ ...dip, seconds: seconds + by }),
      1e-3 * Math.max(1, seconds),
      seconds,
      3 * seconds,
    ),
    celsius: influence((by) => ({ ...dip, celsius: celsius + by }), 0.01, furthest.celsius, furthest.celsius),
    strengthPercent: strengthInfluence,
    makeUpDye: scaled(strengthInfluence, shade.makeUpDye / 100),
  };
}

const colourOf = (
  shade: { readonly curve: ShadeCurve; readonly model: UptakeModel; readonly baseKs?: Float64Array },
  dip: MeantDip,
): Lab => labAfter(shade.curve, equivalentSeconds(shade.model, dip), shade.baseKs);

/** By a central difference. */
const slope = (at: (by: number) => Lab, less: number, more: number): number =>
  ciede2000(at(-less), at(more)) / (less + more);

/** The first distance, of that sign and up to that size, at which a difference passes zero; null where none does. */
function edge(off: (by: number) => number, furthestBy: number): number | null {
  if (off(0) > 0) return 0;
  let inside = 0;
  for (let halvings = doublings; halvings >= 0; halvings--) {
    const by = furthestBy / 2 ** halvings;
    const value = off(by);
    if (value > 0) {
      const [low, high] = by < 0 ? [by, inside] : [inside, by];
      return Math.abs(findRoot(off, { low, high })!);
    }
    inside = by;
  }
  return null;
}

const smaller = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? (a ?? b) : Math.min(a, b);

const scaled = ({ perUnit, hold }: Influence, factor: number): Influence => {
  const times = (value: number | null): number | null => (value === null ? null : value * factor);
  return {
    perUnit: perUnit / factor,
    hold: { less: times(hold.less), more: times(hold.more), within: times(hold.within) },
  };
};
