/**
 * Profit as a share of the price.
 * @example
 * marginOf(80, 100) // => 0.2
 */
export const marginOf = (cost: number, price: number): number => (price - cost) / price;

/**
 * Profit as a share of the cost.
 * @example
 * markupOf(80, 100) // => 0.25
 */
export const markupOf = (cost: number, price: number): number => (price - cost) / cost;

/**
 * The markup on cost that a margin of the price amounts to: m/(1 - m).
 * @example
 * markupForMargin(0.2) // => 0.25
 */
export const markupForMargin = (margin: number): number => margin / (1 - margin);
