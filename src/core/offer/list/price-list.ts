import type { CostedOrder } from "../../cost/batch-costs.js";
import { breakEven, contributionPerPart } from "../../cost/price/break-even.js";
import { type Fault, isError, warning } from "../../fault.js";
import type { Batch, Bath, Shade } from "../../model/batch.js";
import { undyed } from "../../model/undyed.js";
import type { SharedWork } from "../../plan/run/shared-work.js";
import { type OfferWish, type PriceRow, workDaysPerWeek } from "../offer-model.js";
import { freshBath, keptBath, type OfferedItem, offeredItems, orderOf } from "./offered-orders.js";
import { type OneOrder, workOneOrder } from "./one-order.js";

/** A row with the batches that it was taken from. */
export interface PricedItem {
  readonly item: OfferedItem;
  readonly row: PriceRow;
  readonly kept: OneOrder;
  /** The same as the kept one for undyed parts. */
  readonly fresh: OneOrder;
}

export interface PriceList {
  readonly items: readonly PricedItem[];
  /** What cannot be priced, and what is to be said of the rest, each once. */
  readonly faults: readonly Fault[];
}

/** Prices every part in every colour at every quantity, each as a batch of its own. */
export function priceList(
  batch: Batch,
  shades: readonly Shade[],
  { quantities, salesPerYear, hoursPerWeek }: OfferWish,
  shared: SharedWork,
): PriceList {
  const items: PricedItem[] = [];
  const faults = new Map<string, Fault>();
  const work = (item: OfferedItem, quantity: number, bath: Bath | undefined): OneOrder | undefined => {
    const worked = workOneOrder(batch, orderOf(item, quantity, bath), shared);
    for (const fault of worked.faults.filter(isOfTheBatch)) {
      const key = `${fault.code} ${fault.path.join(".")}`;
      if (!faults.has(key)) faults.set(key, isError(fault) ? leftOut(fault) : fault);
    }
    return worked.ok ? worked.value : undefined;
  };
  for (const item of offeredItems(batch, shades))
    for (const quantity of quantities) {
      const bath = item.shade && freshBath(batch, item.shade.dye);
      const keeping = bath && keptBath(bath, quantity, salesPerYear);
      const kept = work(item, quantity, keeping);
      const fresh = bath === undefined ? kept : work(item, quantity, { ...bath, after: "dump" });
      if (kept !== undefined && fresh !== undefined)
        items.push({
          item,
          kept,
          fresh,
          row: rowOf(batch, item, quantity, {
            kept,
            fresh,
            keeping,
            dayMinutes: (60 * hoursPerWeek) / workDaysPerWeek,
          }),
        });
    }
  return { items, faults: [...faults.values()] };
}

/** What a real batch needs beside its bath and loads. */
const ofOneDay: ReadonlySet<string> = new Set(["stock-short", "rinse-short"]);

/**
 * Warnings on the loads, the bath, the rinse or the stock of a row are for the plan of a real batch, unless they keep it
 * from being priced.
 */
const isOfTheBatch = (fault: Fault): boolean =>
  isError(fault) || !(["baths", "orders"].includes(String(fault.path[0])) || ofOneDay.has(fault.code));

const leftOut = (fault: Fault): Fault =>
  warning(fault.code, fault.path, `${fault.message}; what needs it is left out of the prices`, fault.help);

/** What is left of a price with its ending when the tax is paid; null for no price. */
const netOf = ({ price, tax = 0 }: CostedOrder): number | null =>
  price === undefined ? null : price / (1 + tax);

function rowOf(
  { pricing }: Batch,
  { part, shade, base }: OfferedItem,
  quantity: number,
  {
    kept,
    fresh,
    keeping,
    dayMinutes,
  }: { kept: OneOrder; fresh: OneOrder; keeping: Bath | undefined; dayMinutes: number },
): PriceRow {
  const order = kept.costs.orders[0]!;
  const whole = fresh.costs.orders[0]!;
  const netPrice = netOf(order);
  const sale = netPrice === null || pricing === undefined ? null : { netPrice, ...pricing };
  const profit = sale && contributionPerPart(sale, order.costPerPart!);
  const colour = sale && shade && fresh.costs.colours[0];
  const slowest = Math.max(kept.handsMinutes, kept.tankMinutes, kept.dryerMinutes);
  const perHour = (minutes: number): number | null =>
    profit === null || minutes === 0 ? null : (profit * quantity * 60) / minutes;
  return {
    part: part.name,
    shade: shade?.name ?? undyed,
    dye: shade?.dye.name ?? null,
    base: base?.name ?? null,
    quantity,
    costPerPart: order.costPerPart,
    price: order.price ?? null,
    netPrice,
    margin: profit === null ? null : profit / netPrice!,
    profitPerPart: profit,
    profitPerHour: perHour(kept.handsMinutes),
    profitPerTankHour: perHour(kept.tankMinutes),
    freshBath: shade === undefined ? null : { costPerPart: whole.costPerPart, price: whole.price ?? null },
    handsOnMinutes: kept.handsMinutes / quantity,
    tankMinutes: kept.tankMinutes / quantity,
    dryerMinutes: kept.dryerMinutes / quantity,
    dyePerPart: kept.dye / quantity,
    dyeKind: shade?.dye.dilution.kind ?? null,
    paysFromParts: (colour && breakEven(colour.fixed, sale, colour.variablePerPart)?.parts) ?? null,
    partsPerDay: slowest === 0 ? null : (quantity * dayMinutes) / slowest,
    everyDays: keeping?.everyDays ?? null,
    reachable: order.reachable,
    estimated: shade !== undefined && base !== undefined && base.name !== shade.dye.base?.name,
  };
}
