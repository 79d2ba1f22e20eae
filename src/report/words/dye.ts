import type { MixFigures } from "../../core/plan/plan-model.js";
import { type DyeAmount, figureOfDye, kindWith } from "../../core/quantity/dye/dye-figures.js";
import { type DyeKind, dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { listed } from "../../core/quantity/text/listed.js";
import { pour, weigh } from "./amounts.js";

/** How an amount in a unit is measured out. */
const measured = { mL: pour, g: weigh } as const;

/** An amount of a kind of dye with its unit. */
export const measuredDye = (kind: DyeKind, amount: number): string => measured[dyeKinds[kind].unit](amount);

/** What the dye is called at the tank. */
export const dyeName = (dye: DyeAmount): string => dyeKinds[kindWith(dye, "amount")].called;

/** The amount with its unit. */
export const dyeAmount = (dye: DyeAmount): string =>
  measuredDye(kindWith(dye, "amount"), figureOfDye(dye, "amount"));

/** "34.2 mL of straw, 17.1 mL of rose and 8.9 mL of lagoon". */
function eachText(mix: NonNullable<MixFigures<"amount">["mix"]>): string {
  const pours = mix.flatMap((one) =>
    figureOfDye(one, "amount") > 0 ? [`${dyeAmount(one)} of ${one.dye}`] : [],
  );
  return listed(pours, "and");
}

/** The dye to pour, or each of a mix. */
export const pouredText = (dye: DyeAmount & MixFigures<"amount">): string =>
  dye.mix === undefined ? dyeText(dye) : eachText(dye.mix);

/** "584 mL of concentrate" or "12.3 g of powder". */
export const dyeText = (dye: DyeAmount): string =>
  `${dyeAmount(dye)} of ${dyeKinds[kindWith(dye, "amount")].what}`;
