import type { Lab } from "../../model/batch.js";
import type { Correction } from "../mixture/correction.js";
import type { MixDye } from "../mixture/mix-dye.js";
import { type Mixture, mixtureOf } from "../mixture/mixture.js";
import { amountOf, type Poured, pouredFor } from "../solve/amounts.js";
import { mostStrength, type Solved, solveSet } from "../solve/solve-set.js";

/** What to add to a bath that was made up and tried. */
export interface Addition extends Solved {
  readonly dyes: readonly MixDye[];
  /** What goes in. */
  readonly poured: Poured;
  /** Of the bath afterwards, cold. */
  readonly coldMl: number;
}

/** The bath as it is, measured cold. */
export interface Standing {
  readonly dyes: readonly MixDye[];
  readonly strengths: readonly number[];
  readonly coldMl: number;
  /** Most that its vessel holds. */
  readonly capacityMl: number;
}

/** How many volumes between the bath as it is and the full vessel are tried. */
const steps = 12;
/** The smallest addition this near to the best is taken [CIEDE2000]. */
const asGood = 0.05;

/**
 * The smallest addition of dye and water that brings a bath nearest to a colour: nothing can be taken out, so each strength
 * is at least s V/(V + w), w what goes in, up to the capacity.
 * @param dyes those of the bath, and perhaps more
 */
export function additionTo(
  bath: Standing,
  dyes: readonly MixDye[],
  { target, seconds }: { readonly target: Lab; readonly seconds: number },
  correction: Correction,
): Addition {
  const mixture = mixtureOf(dyes, seconds, correction);
  const before = dyes.map(({ name }) => bath.strengths[bath.dyes.findIndex((dye) => dye.name === name)] ?? 0);
  const room = Math.max(0, bath.capacityMl - bath.coldMl);
  const tried = Array.from({ length: steps + 1 }, (_, i) => (room * i * i) / (steps * steps)).map((addedMl) =>
    addedTo(mixture, before, bath.coldMl, addedMl, target),
  );
  const best = Math.min(...tried.map(({ deltaE00 }) => deltaE00));
  return tried.find(({ deltaE00 }) => deltaE00 <= best + asGood)!;
}

/** The best addition that makes the bath larger by so much; where it needs more room than that, what it needs is added. */
function addedTo(
  mixture: Mixture,
  before: readonly number[],
  coldMl: number,
  addedMl: number,
  target: Lab,
): Addition {
  const { dyes } = mixture;
  const after = coldMl + addedMl;
  const thinned = before.map((strength) => (strength * coldMl) / after);
  const limits = {
    low: thinned,
    high: thinned.map((strength) => Math.max(strength, mostStrength)),
    room: addedMl / after,
  };
  const solved = solveSet(mixture, target, limits, [thinned]);
  const more = solved.strengths.map((strength, i) => Math.max(0, strength - thinned[i]!));
  const poured = pouredFor(dyes, more, after);
  const roomMl = dyes.reduce((sum, dye, i) => sum + (dye.share > 0 ? amountOf(dye, more[i]!, after) : 0), 0);
  return {
    ...solved,
    dyes,
    poured: { ...poured, waterMl: Math.max(0, addedMl - roomMl), coldMl: addedMl },
    coldMl: after,
  };
}
