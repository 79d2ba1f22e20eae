import { rinseAfterLoad } from "./rinse.js";

/** A load as it comes from the bath. Dye is mL of concentrate or g of powder. */
export interface RinsedLoad {
  /** Liquor on the parts. */
  readonly dragOutL: number;
  /** Dye in a litre of it. */
  readonly dyePerL: number;
  /** In the parts, where no rinse gets at it. */
  readonly takenUp: number;
}

/** Still baths of water, one after the other. */
export interface RinseBaths {
  readonly rinses: number;
  /** In each. */
  readonly waterL: number;
  /** Loads for which one filling serves. */
  readonly every: number;
}

export interface Rinsing {
  /** Water, all fillings together. */
  readonly litres: number;
  /** Of the dye on and in the parts of the worst load, what is loose after its rinses. */
  readonly looseShare: number;
  /** Goes with the water. */
  readonly dyeToWaste: number;
  /** Goes to the dryer on the parts. */
  readonly dyeOnParts: number;
}

/** Dye in the water of all baths. */
const held = (strengths: readonly number[], waterL: number): number =>
  waterL * strengths.reduce((sum, strength) => sum + strength, 0);

/**
 * Loads rinsed in order: each bath follows c_j = (W c_(j-1) + D c_in)/(W + D), c_in strength of the bath before it, and is
 * filled afresh after so many loads, across orders.
 *
 * Litres = ceil(loads/every) × rinses × W. Dye dragged in goes with the water or stays on the parts. Complete mixing:
 * hollows and rough surfaces give up their liquor later than that.
 * @source batchRinsing1977
 * @example
 * rinseLoads([{ dragOutL: 0.02, dyePerL: 100, takenUp: 2 }], { rinses: 1, waterL: 1.98, every: 1 }) // => { litres: 1.98, looseShare: 0.009900990099009901, dyeToWaste: 1.98, dyeOnParts: 0.02 }
 */
export function rinseLoads(loads: readonly RinsedLoad[], baths: RinseBaths): Rinsing {
  const { rinses, waterL, every } = baths;
  const strengths: number[] = new Array(rinses).fill(0);
  let [looseShare, dyeToWaste, dyeOnParts] = [0, 0, 0];
  for (const [j, { dragOutL, dyePerL, takenUp }] of loads.entries()) {
    if (j % every === 0) {
      dyeToWaste += held(strengths, waterL);
      strengths.fill(0);
    }
    let carried = dyePerL;
    for (let k = 0; k < rinses; k++) {
      carried = rinseAfterLoad(strengths[k]!, carried, { water: waterL, dragOut: dragOutL });
      strengths[k] = carried;
    }
    const loose = dragOutL * carried;
    dyeOnParts += loose;
    if (loose > 0) looseShare = Math.max(looseShare, loose / (loose + takenUp));
  }
  return {
    litres: Math.ceil(loads.length / every) * rinses * waterL,
    looseShare,
    dyeToWaste: dyeToWaste + held(strengths, waterL),
    dyeOnParts,
  };
}
