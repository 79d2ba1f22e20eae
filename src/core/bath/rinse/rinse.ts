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
 * Water [unit of the drag-out] that makes a rinse so many times weaker: drag-out × (ratio - 1), `rinseRatio` solved for it.
 * @source rinsingArticles
 * @example
 * rinseWater(1000, 0.2) // => 199.8
 */
export const rinseWater = (ratio: number, dragOut: number): number => dragOut * (ratio - 1);

/**
 * Share of the dye on a part that is loose after n rinses in clear water, each of it fresh: rⁿ, r = D/(D + W).
 *
 * D drag-out and W water of one rinse, in one unit; complete mixing, and parts carry D out of each rinse.
 * @source rinsingArticles
 * @example
 * looseLeft(0.04, 1.96, 2) // => 0.0004
 */
export const looseLeft = (dragOut: number, water: number, rinses: number): number =>
  rinseRatio(dragOut, water) ** -rinses;

/**
 * Strength of a rinse after a load went through it: c = (W c_before + D c_in)/(W + D).
 *
 * W water, D drag-out, in one unit; c_in strength of the liquor that the parts carry in, in the unit of c_before. The parts
 * carry D of strength c out, so W stays.
 * @source batchRinsing1977
 * @example
 * rinseAfterLoad(0, 1, { water: 1.99, dragOut: 0.01 }) // => 0.005
 */
export const rinseAfterLoad = (
  before: number,
  carriedIn: number,
  { water, dragOut }: { readonly water: number; readonly dragOut: number },
): number => (water * before + dragOut * carriedIn) / (water + dragOut);

/**
 * Liquor that left a bath, from what was bought to keep its strength: mass bought/concentration.
 *
 * Right where nothing else uses the substance up; with dye, take what the parts took up off the purchases first.
 * @source dragOutNote
 * @example
 * dragOutFromPurchases(16000, 20) // => 800
 */
export const dragOutFromPurchases = (bought: number, perVolume: number): number => bought / perVolume;
