import { type RinseBaths, type RinsedLoad, rinseLoads } from "./rinse-loads.js";

/** Share of the dye on the parts that may be loose after the last rinse: common practice, no source. */
export const looseLimit = 0.01;

/** More rinses than this are not practical. */
const MOST_RINSES = 12;

const isClean = (loads: readonly RinsedLoad[], baths: RinseBaths): boolean =>
  rinseLoads(loads, baths).looseShare < looseLimit;

/**
 * Fewest rinses that bring the loose share of every load under 1 %, with as much water each and changed as often;
 * undefined where a dozen do not.
 * @source batchRinsing1977
 * @example
 * rinsesEnough([{ dragOutL: 0.04, dyePerL: 100, takenUp: 2 }], { waterL: 1.96, every: 1 }) // => 2
 */
export function rinsesEnough(
  loads: readonly RinsedLoad[],
  baths: Omit<RinseBaths, "rinses">,
): number | undefined {
  for (let rinses = 1; rinses <= MOST_RINSES; rinses++)
    if (isClean(loads, { ...baths, rinses })) return rinses;
  return undefined;
}

/**
 * Most loads that one filling may serve before a load is left with 1 % of loose dye; 0 where fresh water for each load
 * is not enough.
 * @source batchRinsing1977
 * @example
 * loadsPerFilling([1, 2, 3, 4].map(() => ({ dragOutL: 0.02, dyePerL: 100, takenUp: 5 })), { rinses: 1, waterL: 1.98 }) // => 2
 */
export function loadsPerFilling(loads: readonly RinsedLoad[], baths: Omit<RinseBaths, "every">): number {
  let every = 0;
  while (every < loads.length && isClean(loads, { ...baths, every: every + 1 })) every++;
  return every;
}
