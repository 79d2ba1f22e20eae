import { undyed } from "../../core/model/undyed.js";
import { listed } from "../../core/quantity/text/listed.js";
import { isBuild } from "../schema/blank.js";
import { isAmount } from "../to-batch/amounts.js";
import { amountsIn, items, mixes, own, type PartlyRead, plainDyes, type Report } from "./report.js";

/** The base of a mix that names none: that of its dyes. */
function baseOfMix(batch: PartlyRead, name: string | undefined): string | undefined {
  const amounts = amountsIn(mixes(batch).find(([one]) => one === name)?.[1].mix);
  return plainDyes(batch).find(([part]) => Object.hasOwn(amounts, part))?.[1].base;
}

/** Every order needs a bath of its dye, and a price of the undyed part on its base. */
export function checkOrders(batch: PartlyRead, report: Report): void {
  const baths = items(batch.baths);
  const inBaths = new Set(baths.map(([, bath]) => bath.dye));
  for (const [i, order] of items(batch.orders)) {
    const shade = own(batch.shades, order.shade);
    const dyeName = shade?.dye;
    const dye = own(batch.dyes, dyeName);
    if (dye !== undefined && baths.length > 0 && !inBaths.has(dyeName) && !inBaths.has(undefined))
      report(
        "no-bath",
        ["orders", i, "shade"],
        `no bath has the dye ${dyeName}, which the shade ${order.shade} needs`,
        `add - { tank: ${Object.keys(batch.tanks ?? {})[0] ?? "six"}, dye: ${dyeName} } under baths`,
      );
    const part = own(batch.parts, order.part);
    const blank = part?.blank;
    if (typeof blank !== "object" || blank === null || isAmount(blank) || isBuild(blank)) continue;
    const base = order.base ?? dye?.base ?? baseOfMix(batch, dyeName);
    const known = Object.keys(blank);
    if (base === undefined) {
      if (dye !== undefined || order.shade === undyed)
        report(
          "base-missing",
          ["orders", i, "base"],
          `the part ${order.part} has a blank cost per base, but the order has no base`,
          `add base: to the order, one of ${listed(known)}`,
          "key",
        );
    } else if (own(batch.bases, base) !== undefined && !Object.hasOwn(blank, base))
      report(
        "blank-missing",
        ["orders", i, order.base === undefined ? "part" : "base"],
        `the part ${order.part} has no blank cost for the base ${base}`,
        `add ${base}: to parts.${order.part}.blank, or order one of ${listed(known)}`,
      );
  }
}
