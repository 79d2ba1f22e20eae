import { figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import type { RecipeDye } from "../../core/recipe/blend/described.js";
import { decimals } from "./digits.js";

/** A number to three digits, at most two decimals: what a syringe or a small balance tells apart. */
const three = (value: number): string => decimals(value, value >= 99.95 ? 0 : value >= 9.995 ? 1 : 2);

/** A volume to three digits: "0.83 mL", "59.8 mL", "494 mL", "5.77 L". */
export const fineMl = (ml: number): string =>
  ml < 999.5 ? `${three(ml)} mL` : `${decimals(ml / 1000, ml < 99_950 ? 2 : 1)} L`;

/** The dye of a recipe to three digits. */
export function fineDye(dye: RecipeDye): string {
  const { unit } = dyeKinds[kindWith(dye, "amount")];
  const amount = figureOfDye(dye, "amount");
  return unit === "mL" ? fineMl(amount) : `${three(amount)} g`;
}
