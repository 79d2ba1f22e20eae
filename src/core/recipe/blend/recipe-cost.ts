import type { Rates } from "../../model/batch.js";
import type { MixDye } from "../mixture/mix-dye.js";
import { pouredFor } from "../solve/amounts.js";

/** Dye and water of a litre of a mixed bath, measured cold; undefined where a price is not known. */
export function costPerL(
  dyes: readonly MixDye[],
  strengths: ArrayLike<number>,
  rates: Rates,
): number | undefined {
  const { dyes: poured, waterMl } = pouredFor(dyes, strengths, 1000);
  let cost = (waterMl / 1e6) * (rates.waterPerM3 ?? 0);
  for (const [i, { amount }] of poured.entries()) {
    const { price } = dyes[i]!.model.dye;
    if (price === undefined) return undefined;
    cost += (amount / 1000) * price;
  }
  return cost;
}
