import { exactSum } from "../maths/exact-sum.js";
import type { Dye } from "../model/batch.js";
import { dyesOf } from "../model/dyes-of.js";

/** What amounts of the dyes of a bath cost, each by its own price; a price that is not given counts as nothing. */
export const dyeCost = (dye: Dye, amounts: readonly number[]): number =>
  exactSum(dyesOf(dye).map(({ price }, i) => ((price ?? 0) * amounts[i]!) / 1000));

/** Whether the price of every dye in a bath is given. */
export const isPriced = (dye: Dye): boolean => dyesOf(dye).every(({ price }) => price !== undefined);
