import type { CostedOrder } from "../../cost/batch-costs.js";
import { sheetTotal } from "../../cost/line/cost-sheet.js";
import { otherBases } from "../../cost/price/other-bases.js";
import { sellingPrice } from "../../cost/price/selling-price.js";
import { moneyText } from "../../cost/rounding.js";
import { type Fault, warning } from "../../fault.js";
import type { Batch, Order } from "../../model/batch.js";
import { bathRestsOn } from "../../model/rests-on.js";
import { undyed } from "../../model/undyed.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";

/** One order with its costs and price; the fault is that no price pays for it. */
export function costedOrder(
  batch: Batch,
  order: Order,
  aim: ShadeAim | undefined,
  started: number,
  lines: CostedOrder["lines"] | undefined,
): { value: CostedOrder; faults: readonly Fault[] } {
  const total = lines ? sheetTotal(lines) : null;
  const costPerPart = total === null ? null : total / order.quantity;
  const reachable = aim?.reachable ?? true;
  const value: CostedOrder = {
    order: order.index + 1,
    part: order.part.name,
    shade: order.shade?.name ?? undyed,
    base: order.base?.name ?? null,
    reachable,
    quantity: order.quantity,
    started,
    costPerPart,
    total,
    lines: lines ?? null,
    otherBases: otherBases(order, { costPerPart, started, quantity: order.quantity }, batch.pricing),
    restsOnAssumed: order.shade ? bathRestsOn(order.shade.dye, batch.handling) : [],
  };
  // What does not come out as ordered has no price.
  if (!batch.pricing || costPerPart === null || !reachable) return { value, faults: [] };
  const price = sellingPrice({ cost: costPerPart, ...batch.pricing });
  if (!price.ok) return { value, faults: price.faults };
  const { netPrice, price: taxed } = price.value;
  return { value: { ...value, netPrice, price: taxed, tax: batch.pricing.tax }, faults: [] };
}

/** The warning on an order that costs more than the batch allows. */
export function overLimit(batch: Batch, order: CostedOrder): Fault[] {
  const limit = batch.limits.costPerPart;
  if (limit === undefined || order.costPerPart === null || order.costPerPart <= limit) return [];
  const rounded = (value: number): string =>
    batch.currency === undefined ? value.toFixed(2) : moneyText(value, batch.currency);
  const alike = rounded(order.costPerPart) === rounded(limit);
  const amount = (value: number): string =>
    [alike ? shortNumber(value, 6) : rounded(value), batch.currency].filter(Boolean).join(" ");
  return [
    warning(
      "over-limit",
      ["limits", "costPerPart"],
      `order ${order.order} (${order.part}, ${order.shade}) costs ${amount(order.costPerPart)} a part, over the limit of ${amount(limit)}`,
    ),
  ];
}
