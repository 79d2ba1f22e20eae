/**
 * Stock solution that brings a shade of so many per cent of the goods' mass: m p/c [mL].
 *
 * m goods [g], p shade [% of mass], c stock strength [g per 100 mL].
 * @source textileLabPages
 * @example
 * stockMl({ massG: 5, percentOfMass: 2, stockGPer100Ml: 0.5 }) // => 20
 */
export const stockMl = (recipe: {
  readonly massG: number;
  readonly percentOfMass: number;
  readonly stockGPer100Ml: number;
}): number => (recipe.massG * recipe.percentOfMass) / recipe.stockGPer100Ml;

/**
 * Liquor for a mass of goods at a liquor ratio [mL]; one gram of goods takes `ratio` mL.
 * @source textileLabPages
 * @example
 * liquorMl(5, 10) // => 50
 */
export const liquorMl = (massG: number, ratio: number): number => massG * ratio;

/**
 * Liquor ratio [L/kg] of a bath and its goods.
 * @source textileLabPages
 * @example
 * liquorRatio(1000, 100) // => 10
 */
export const liquorRatio = (liquorL: number, goodsKg: number): number => liquorL / goodsKg;

/**
 * Shade of a mass of dye on a mass of goods [% of mass].
 * @source textileLabPages
 * @example
 * shadePercent(4, 100) // => 4
 */
export const shadePercent = (dyeMass: number, goodsMass: number): number => (100 * dyeMass) / goodsMass;

/**
 * Stock solution of an auxiliary that is dosed per volume of liquor: V g/(10 c) [mL].
 *
 * V liquor [mL], g dose [g/L], c stock strength [g per 100 mL].
 * @source textileLabPages
 * @example
 * auxiliaryStockMl({ liquorMl: 50, gramsPerL: 20, stockGPer100Ml: 25 }) // => 4
 */
export const auxiliaryStockMl = (dose: {
  readonly liquorMl: number;
  readonly gramsPerL: number;
  readonly stockGPer100Ml: number;
}): number => (dose.liquorMl * dose.gramsPerL) / (10 * dose.stockGPer100Ml);

/**
 * Amount of a dye of another strength that does the work of a standard amount: amount × 100/strength.
 *
 * Common practice, no source. Strength in per cent of the standard.
 * @example
 * strengthCorrected(10, 120) // => 8.3333
 * strengthCorrected(8, 40) // => 20
 */
export const strengthCorrected = (standardAmount: number, strengthPercent: number): number =>
  (standardAmount * 100) / strengthPercent;

/**
 * Share of the dye that has gone on the goods when goods and liquor are in balance: K/(K + L).
 *
 * K partition coefficient of a linear isotherm, L liquor ratio, both [L/kg].
 * @source broadbent2001
 * @example
 * exhaustion(100, 20) // => 0.83333
 */
export const exhaustion = (partitionLPerKg: number, liquorRatioLPerKg: number): number =>
  partitionLPerKg / (partitionLPerKg + liquorRatioLPerKg);
