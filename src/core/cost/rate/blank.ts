import { defaults } from "../../model/defaults.js";

/** What an undyed part is built from, in a powder bed: the base's prices and the build that holds it. */
export interface BlankBuild {
  readonly massG: number;
  /** Per kg of fresh powder. */
  readonly powderPerKg: number;
  /** Share of fresh powder that each build is filled with, 0..1. */
  readonly refresh: number;
  /** Mass of the parts over that of all powder in the build, 0..1. */
  readonly packing: number;
  /** Hours of a whole build, warm-up and cooling included. */
  readonly buildHours: number;
  readonly machinePerHour: number;
  readonly partsPerBuild: number;
  /** Cleaning, blasting and the like, per part. */
  readonly finishing?: number;
}

/** What an undyed part costs, by what it is paid for. */
export interface BlankCost {
  readonly powder: number;
  readonly machine: number;
  readonly finishing: number;
  readonly total: number;
  /** Fresh powder bought per part. */
  readonly powderG: number;
}

/**
 * Fresh powder bought per mass of parts: refresh/packing, at least 1 [g/g].
 *
 * A build of parts of mass m holds m/packing of powder, of which the share refresh must be fresh; what is left
 * over and not needed for the next build is thrown away. The parts themselves take their mass in any case.
 * Steady state, 0 <= refresh <= 1, 0 < packing <= 1. Common practice, no source.
 * @example
 * powderPerPartMass(0.4, 0.1) // => 4
 * powderPerPartMass(0.1, 0.2) // => 1
 */
export const powderPerPartMass = (refresh: number, packing: number): number => Math.max(1, refresh / packing);

/**
 * Cost of an undyed part: powder bought per part × its price + build hours × machine rate / parts in a build +
 * finishing.
 *
 * @example
 * blankCost({ massG: 6.4, powderPerKg: 62, refresh: 0.4, packing: 0.1, buildHours: 14, machinePerHour: 9.5, partsPerBuild: 180 }).total // => 2.326089
 */
export function blankCost(build: BlankBuild): BlankCost {
  const powderG = build.massG * powderPerPartMass(build.refresh, build.packing);
  const powder = (powderG * build.powderPerKg) / 1000;
  const machine = (build.buildHours * build.machinePerHour) / build.partsPerBuild;
  const finishing = build.finishing ?? defaults.blank.finishing;
  return { powder, machine, finishing, total: powder + machine + finishing, powderG };
}

/**
 * What one blank costs more than another, by what it is paid for: white less grey.
 * @example
 * blankDifference({ massG: 10, powderPerKg: 70, refresh: 0.4, packing: 0.1, buildHours: 10, machinePerHour: 9, partsPerBuild: 100 }, { massG: 10, powderPerKg: 60, refresh: 0.4, packing: 0.1, buildHours: 8, machinePerHour: 9, partsPerBuild: 100 }).total // => 0.58000
 */
export function blankDifference(one: BlankBuild, other: BlankBuild): BlankCost {
  const [a, b] = [blankCost(one), blankCost(other)];
  return {
    powder: a.powder - b.powder,
    machine: a.machine - b.machine,
    finishing: a.finishing - b.finishing,
    total: a.total - b.total,
    powderG: a.powderG - b.powderG,
  };
}
