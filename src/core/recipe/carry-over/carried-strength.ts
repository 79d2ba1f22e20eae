import { looseLeft } from "../../bath/rinse/rinse.js";

/** Liquor that stays in a tank, or in a basket and tongs together [mL]: common practice, no source. */
export const carriedMl = 10;

/** Liquor of the last colour that a tank, a basket or tongs bring along, and what it is rinsed with. */
export interface Carried {
  /** r and V, in one unit. */
  readonly carriedMl: number;
  readonly bathMl: number;
  /** Water of one rinse. */
  readonly rinseMl: number;
}

/**
 * Strength that liquor of the last colour gives its dye in the next bath: s_c r/V (D/(D + W))^n [-], n rinses in W of water
 * that each leave D = r of liquor behind.
 * @source rinsingArticles
 * @example
 * carriedStrength(1, { carriedMl: 10, bathMl: 5000, rinseMl: 1990 }, 0) // => 0.002
 * carriedStrength(1, { carriedMl: 10, bathMl: 5000, rinseMl: 1990 }, 1) // => 0.00001
 */
export const carriedStrength = (
  strength: number,
  { carriedMl, bathMl, rinseMl }: Carried,
  rinses: number,
): number => ((strength * carriedMl) / bathMl) * looseLeft(carriedMl, rinseMl, rinses);
