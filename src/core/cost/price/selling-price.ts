import { done, error, failed, type Outcome } from "../../fault.js";
import type { Pricing } from "../../model/batch.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import { nextEnding } from "./ending.js";

/** A price and how it came about; unrounded but for the ending. */
export interface SellingPrice {
  /** Cost with overhead. */
  readonly fullCost: number;
  /** Before tax. */
  readonly netPrice: number;
  /** With tax, raised to the ending. */
  readonly price: number;
}

/**
 * Price of something that costs that much: cost (1 + overhead)/(1 - fees - margin), then tax, then up to the
 * next ending.
 *
 * Fees and margin are shares of the price before tax. Together they must stay under 100 %.
 * @source quotationPage
 * @example
 * sellingPrice({ cost: 4, overhead: 0.1, fees: 0.04, margin: 0.45, tax: 0.2, ending: 0.9 }).value.price // => 10.9
 * sellingPrice({ cost: 4, overhead: 0, fees: 0.5, margin: 0.5, tax: 0 }).ok // => false
 */
export function sellingPrice(input: Pricing & { readonly cost: number }): Outcome<SellingPrice> {
  const { cost, overhead, fees, margin, tax, ending } = input;
  const kept = 1 - fees - margin;
  if (!(kept > 1e-12)) {
    const percent = (share: number): string => `${shortNumber(100 * share, 6)} %`;
    return failed(
      error(
        "margin-and-fees",
        ["pricing", "margin"],
        `margin ${percent(margin)} and fees ${percent(fees)} leave nothing of the price to pay the cost`,
        "margin and fees are shares of the price: together they must stay under 100 %",
      ),
    );
  }
  const fullCost = cost * (1 + overhead);
  const netPrice = fullCost / kept;
  const taxed = netPrice * (1 + tax);
  return done({ fullCost, netPrice, price: ending === undefined ? taxed : nextEnding(taxed, ending) });
}
