import { contributionPerPart, type Sale } from "./break-even.js";

/** A part on one base: what a good one costs in all, blank included. */
export interface BaseOffer extends Sale {
  readonly costPerPart: number;
}

/**
 * Profit of a good part: price less fees less cost with overhead.
 * @example
 * profitPerPart({ netPrice: 6, fees: 0.05, overhead: 0.1, costPerPart: 3 }) // => 2.40
 */
export const profitPerPart = (offer: BaseOffer): number => contributionPerPart(offer, offer.costPerPart);

/**
 * What a part on one base must be sold for above the price of one on the other, before tax, for the same
 * profit: (1 + overhead) (cost - other cost)/(1 - fees).
 *
 * Both are sold through one channel. Negative where the first is the cheaper one. Common practice, no source.
 * @example
 * equalProfitSurcharge({ costPerPart: 3.4, other: 3, fees: 0.05, overhead: 0.1 }) // => 0.463158
 */
export const equalProfitSurcharge = (of: {
  readonly costPerPart: number;
  readonly other: number;
  readonly fees: number;
  readonly overhead?: number;
}): number => ((1 + (of.overhead ?? 0)) * (of.costPerPart - of.other)) / (1 - of.fees);

/**
 * What a blank of one base may cost above its present price before its part earns no more than the other
 * base's: the difference of their profits, over overhead, times the yield of the first.
 *
 * `goodShare`: good parts of those started on the first base; each good part carries 1/goodShare blanks.
 * Negative where the blank must become cheaper. Common practice, no source.
 * @example
 * blankRiseToEqualProfit({ netPrice: 7, fees: 0, costPerPart: 4 }, { netPrice: 6, fees: 0, costPerPart: 3.5 }, 0.9) // => 0.45
 */
export const blankRiseToEqualProfit = (one: BaseOffer, other: BaseOffer, goodShare: number): number =>
  ((profitPerPart(one) - profitPerPart(other)) * goodShare) / (1 + (one.overhead ?? 0));
