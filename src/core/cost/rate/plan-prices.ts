import { mapped } from "../../mapped.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import type { Batch, Dye, Rates } from "../../model/batch.js";
import { dyesOf } from "../../model/dyes-of.js";
import { figureOf } from "../../quantity/dye/dilution.js";

/** What a plan's costs were reckoned with, for a later comparison. */
export interface PlanPrices {
  readonly rates: Rates;
  /** Per L of concentrate or kg of powder, of the dyes in the baths; of a mix after them that of its recipe. */
  readonly dyes: readonly { readonly dye: string; readonly price: number | null }[];
}

export const pricesOf = (batch: Batch): PlanPrices => ({
  rates: batch.rates,
  dyes: mapped(
    [...new Set([...batch.baths.flatMap(({ dye }) => dyesOf(dye)), ...mixesOf(batch)])],
    (dye) => ({
      dye: dye.name,
      price: priceOf(dye),
    }),
  ),
});

const mixesOf = ({ baths }: Batch): Dye[] => baths.flatMap(({ dye }) => (dye.mix === undefined ? [] : [dye]));

/** The price of a dye; of a mix the mean of its dyes', as much of each as its recipe has. */
function priceOf({ price, mix }: Dye): number | null {
  if (mix === undefined) return price ?? null;
  if (mix.parts.some(({ dye }) => dye.price === undefined)) return null;
  const amount = exactSumOf(mix.parts, ({ dilution }) => figureOf(dilution));
  return exactSumOf(mix.parts, ({ dye, dilution }) => dye.price! * figureOf(dilution)) / amount;
}
