import { mapped } from "../../mapped.js";
import type { Batch, Rates } from "../../model/batch.js";
import { dyesOf } from "../../model/dyes-of.js";

/** What a plan's costs were reckoned with, for a later comparison. */
export interface PlanPrices {
  readonly rates: Rates;
  /** Per L of concentrate or kg of powder, of the dyes in the baths. */
  readonly dyes: readonly { readonly dye: string; readonly price: number | null }[];
}

export const pricesOf = (batch: Batch): PlanPrices => ({
  rates: batch.rates,
  dyes: mapped([...new Set(batch.baths.flatMap((bath) => dyesOf(bath.dye)))], (dye) => ({
    dye: dye.name,
    price: dye.price ?? null,
  })),
});
