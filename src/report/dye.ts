import { pour, weigh } from "./amounts.js";

/** An amount of dye under the name that says its unit. */
export type DyeAmount = { readonly concentrateMl: number } | { readonly powderG: number };

/** What the dye is called at the tank. */
export const dyeName = (dye: DyeAmount): string => ("powderG" in dye ? "powder dye" : "concentrate");

/** The amount with its unit. */
export const dyeAmount = (dye: DyeAmount): string =>
  "powderG" in dye ? weigh(dye.powderG) : pour(dye.concentrateMl);
