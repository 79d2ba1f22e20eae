/**
 * What people know of how fast a bath is used up. Dye is mL of concentrate or g of powder. `relative` is one
 * standard deviation of the figure as a share of it; `depth` the mean depth of what was dyed, by area.
 */
interface Known {
  readonly relative?: number;
}

/** So much dye colours so much area: a supplier's figure, or the shop's own. */
export interface YieldEvidence extends Known {
  readonly kind: "yield";
  readonly dye: number;
  readonly areaDm2: number;
  readonly depth: number;
  /** Share of the dye that was on parts or rinsed away when the bath was given up; 1 where all was. */
  readonly usedShare?: number;
  /** Dye in a hot litre of the bath, and its mean strength. */
  readonly dyePerL: number;
  readonly strength?: number;
}

/** What was bought to dye an area, less what is on the shelf and in the tanks and what was thrown out with baths. */
export interface PurchaseEvidence extends Known {
  readonly kind: "purchases";
  readonly bought: number;
  readonly left: number;
  readonly dumped: number;
  readonly areaDm2: number;
  readonly depth: number;
  readonly dyePerL: number;
  readonly strength?: number;
}

/** Parts weighed dry, and wet after draining as usual. */
export interface WeighingEvidence extends Known {
  readonly kind: "weighing";
  readonly dryG: number;
  readonly wetG: number;
  /** Of all parts on the balance. */
  readonly areaDm2: number;
  /** Of the liquor as it was weighed; 1 where it is not known. */
  readonly gPerMl?: number;
}

/** A bath in which the same shade took so many times as long after an area was dyed. */
export interface SlowerEvidence extends Known {
  readonly kind: "slower";
  /** Strength that the longer time tells, relative to the start: `strengthOfSlowerDip`. */
  readonly strength: number;
  /** Standard deviation of that strength. */
  readonly strengthError: number;
  readonly areaDm2: number;
  readonly depth: number;
  readonly dyePerL: number;
  readonly volumeL: number;
  readonly evaporatedL: number;
  /** What was lost was left lost, or filled up with water or with fresh liquor. */
  readonly refill: "none" | "water" | "fresh";
}

/** One piece of evidence for κ, for the drag-out, or for both together. */
export type Evidence = YieldEvidence | PurchaseEvidence | WeighingEvidence | SlowerEvidence;

/**
 * Standard deviations as shares of the figure, where the user gives none. Common practice, no source. A
 * supplier's yield is round and at an unknown depth; purchases miss what is spilled; weighing varies with how
 * parts hang.
 */
export const usualRelative = { yield: 0.5, purchases: 0.15, weighing: 0.2 } as const;

/** Of a ratio of two dip times, as for `usualRelative`. Common practice, no source. */
export const usualTimeRatioRelative = 0.15;

/**
 * Area of parts given by mass [dm²]: "40 kg of parts" at so many dm² per kg.
 * @example
 * areaOfMass(40, 35) // => 1400
 */
export const areaOfMass = (massKg: number, areaDm2PerKg: number): number => massKg * areaDm2PerKg;
