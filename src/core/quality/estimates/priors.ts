import { halfWidth95 } from "../../maths/sampling/half-width-95.js";
import { deviationOfFactor } from "../../maths/sampling/log-normal.js";
import type { Dye, Found, Handling } from "../../model/batch.js";
import { defaults } from "../../model/defaults.js";
import { slowing } from "../../uptake/law/slowing.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import type { Prior, Priors } from "./figures.js";

/** Factor within which times are foreseen before any reading, 95 %. From the simulation of invented dyes. */
const timesWithin = 2.5;

/** Whether a factor of times is more than a dye's pace or a worn bath explains, so that a slip of the pen is likelier. */
export const isDoubtfulFactor = (factor: number): boolean => factor > timesWithin || factor < 1 / timesWithin;

/** 95 % of evaporation lies within this of what is computed. */
const evaporationWithin = 0.15;
/** A figure that somebody gave is right to this share, 95 %. Common practice, no source. */
const givenWithin = 0.2;
/** The exponent lies between 1 and 2: as wide as a uniform distribution over that range. */
const exponentMiddle = 1.5;
const exponentDeviation = 1 / Math.sqrt(12);

const given = givenWithin / halfWidth95;

const foundDeviation = ({ interval95: [low, high] }: Found): number =>
  Math.log(high / low) / (2 * halfWidth95);

/**
 * An assumed range is a guess too. A fit that starts from one twice as wide is drawn to it by a quarter as much; in the
 * simulated workshops that takes most of the pull out of large uptakes.
 */
const startsWider = 2;

const deviationOf = (assumed: boolean, found: Found | undefined, factor: number): number =>
  found !== undefined ? foundDeviation(found) : assumed ? deviationOfFactor(factor) : given;

const wider = (assumed: boolean, prior: Pick<Prior, "deviation">): Omit<Prior, "value"> =>
  assumed ? { ...prior, startDeviation: startsWider * prior.deviation } : prior;

/** What is known of a dye's figures before its log is read: as measured, given or assumed. */
export function priorsOf(
  {
    dye,
    uptake,
    response,
  }: Pick<DyeModel, "uptake" | "response"> & {
    readonly dye: Pick<
      Dye,
      "uptakePerDm2" | "uptakeAssumed" | "uptakeFound" | "activationEnergyAssumed" | "strengthExponent"
    >;
  },
  handling: Pick<Handling, "dragOutMlPerDm2" | "dragOutAssumed" | "dragOutFound">,
): Priors {
  const exponent = uptake.strengthExponent ?? Math.log2(slowing(uptake, uptake.referenceSeconds / 3, 0.5));
  const exponentKnown =
    response.strengthExponent?.standardError ?? (dye.strengthExponent === undefined ? undefined : 0.1);
  const energy = response.activationEnergyJPerMol;
  return {
    timeFactor: { value: 1, deviation: Math.log(timesWithin) / halfWidth95 },
    uptakePerDm2: {
      value: dye.uptakePerDm2,
      ...wider(dye.uptakeAssumed && dye.uptakeFound === undefined, {
        deviation: deviationOf(dye.uptakeAssumed, dye.uptakeFound, defaults.dye.uptakeMlPerDm2.factor),
      }),
    },
    dragOutMlPerDm2: {
      value: handling.dragOutMlPerDm2,
      deviation: deviationOf(
        handling.dragOutAssumed,
        handling.dragOutFound,
        defaults.handling.dragOutMlPerDm2.factor,
      ),
    },
    strengthExponent:
      exponentKnown === undefined
        ? { value: exponentMiddle, deviation: exponentDeviation / exponentMiddle, held: exponent }
        : { value: exponent, deviation: exponentKnown / exponent },
    activationEnergyJPerMol: {
      value: uptake.activationEnergyJPerMol,
      deviation:
        energy !== undefined
          ? energy.standardError / energy.value
          : deviationOf(dye.activationEnergyAssumed, undefined, defaults.dye.activationEnergyJPerMol.factor),
    },
    evaporation: { value: 1, deviation: evaporationWithin / halfWidth95 },
  };
}
