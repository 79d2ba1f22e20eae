/**
 * How many times weaker a rinse is than the liquor dragged into it: (drag-out + water)/drag-out.
 *
 * Both in one unit: per load, per hour, or as parts.
 * @source rinsingArticles
 * @example
 * rinseRatio(1, 99) // => 100
 */
export const rinseRatio = (dragOut: number, water: number): number => (dragOut + water) / dragOut;

/**
 * Strength of the rinse, in the unit of the liquor's strength.
 * @source rinsingArticles
 * @example
 * rinseStrength(10, 1, 2000) // => 0.004998
 */
export const rinseStrength = (liquorStrength: number, dragOut: number, water: number): number =>
  liquorStrength / rinseRatio(dragOut, water);

/**
 * Liquor that left a bath, from what was bought to keep its strength: mass bought/concentration.
 *
 * Right where nothing else uses the substance up; with dye, take what the parts took up off the purchases first.
 * @source dragOutNote
 * @example
 * dragOutFromPurchases(16000, 20) // => 800
 */
export const dragOutFromPurchases = (bought: number, perVolume: number): number => bought / perVolume;
