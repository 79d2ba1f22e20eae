import type { Rates } from "../../model/batch.js";

/** Prices that a whole batch shares; those that were not given are null. */
export type KnownRates = { readonly [Rate in keyof Rates]-?: number | null };

/** The rates where none was given, in the order in which reports have them. */
export const noRates: KnownRates = {
  electricityPerKwh: null,
  waterPerM3: null,
  labourPerHour: null,
  disposalPerL: null,
};

/** What an order's cost rests on, so that a later comparison can say what changed. */
export interface CostDrivers extends KnownRates {
  readonly dye: string | null;
  /** Per L of concentrate or kg of powder; null where it was not given. */
  readonly dyePrice: number | null;
  readonly loads: number;
  /** Means over the order's loads. */
  readonly partsPerLoad: number;
  readonly dipSeconds: number;
  readonly cycleSeconds: number;
  /** Of the bath before the dip. */
  readonly strength: number;
}

/** The driver that is the price of a cost line. */
export type PriceDriver = keyof KnownRates | "dyePrice";
