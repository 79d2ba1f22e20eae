import { exactSumOf } from "../../maths/exact-sum.js";

/** A product in a mix. */
export interface MixProduct {
  /** Sold for each composite unit: 5 in a mix of 5:3:2. */
  readonly weight: number;
  /** What one leaves towards the fixed costs: price less variable cost. */
  readonly contribution: number;
}

export interface MixBreakEven {
  /** What one composite unit leaves. */
  readonly compositeContribution: number;
  readonly composites: number;
  /** In the order of the products; not rounded. */
  readonly units: readonly number[];
}

/**
 * Units of several products, sold in a fixed mix, that pay for fixed costs: n = fixed/Σ w c composite units, w n of each.
 *
 * Weights from 0 on. Undefined where a composite unit leaves nothing, so that no quantity pays.
 * @param fixed costs that the products share [money]
 * @source managerialAccounting section 3.4
 * @example
 * mixBreakEven([{ weight: 3, contribution: 6 }, { weight: 1, contribution: 4 }], 220000).units // => [30000, 10000]
 * mixBreakEven([{ weight: 1, contribution: -1 }], 100) // => undefined
 */
export function mixBreakEven(products: readonly MixProduct[], fixed: number): MixBreakEven | undefined {
  const compositeContribution = exactSumOf(products, ({ weight, contribution }) => weight * contribution);
  const composites = fixed / compositeContribution;
  if (!(compositeContribution > 0 && Number.isFinite(composites))) return undefined;
  return { compositeContribution, composites, units: products.map(({ weight }) => weight * composites) };
}
