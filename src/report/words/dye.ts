import type { DyeAmount } from "../../core/bath/make-up/make-up.js";
import { pour, weigh } from "./amounts.js";

/** What the dye is called at the tank. */
export const dyeName = (dye: DyeAmount): string => ("powderG" in dye ? "powder dye" : "concentrate");

/** The amount with its unit. */
export const dyeAmount = (dye: DyeAmount): string =>
  "powderG" in dye ? weigh(dye.powderG) : pour(dye.concentrateMl);
