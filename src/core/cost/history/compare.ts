import { done, error, failed, type Outcome } from "../../fault.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import { byLine, type CostSheet } from "../line/cost-sheet.js";
import { type CostCause, causesOf } from "./causes.js";
import type { CostSnapshot, OrderCost } from "./snapshot.js";

export type ChangeStatus = "changed" | "same" | "new" | "gone";

/** One order in two reports. Costs are those of a good part. */
export interface OrderChange {
  readonly status: ChangeStatus;
  readonly batch: string;
  readonly date: string | null;
  /** Its number now; before, where it is gone. */
  readonly order: number;
  readonly part: string;
  readonly shade: string;
  readonly base: string | null;
  /** Good parts; null in the report that does not have the order. */
  readonly quantityBefore: number | null;
  readonly quantityNow: number | null;
  readonly totalBefore: number | null;
  readonly totalNow: number | null;
  readonly costBefore: number | null;
  readonly costNow: number | null;
  /** Null where one of the two costs is not known. */
  readonly change: number | null;
  readonly lines: Readonly<CostSheet> | null;
  readonly causes: readonly CostCause[];
  readonly priceBefore: number | null;
  readonly priceNow: number | null;
}

export interface CostComparison {
  readonly currency: string | null;
  readonly orders: readonly OrderChange[];
  readonly counts: Readonly<Record<ChangeStatus, number>>;
  /** Costs of all orders of each report. */
  readonly totalBefore: number;
  readonly totalNow: number;
}

/** A cost that moved by less than this share of itself is the same: the noise of arithmetic. */
const noise = 1e-9;

const isSame = (was: number | null, is: number | null): boolean =>
  was === is || (was !== null && is !== null && Math.abs(is - was) <= noise * Math.max(1, Math.abs(was)));

const keyOf = ({ batch, part, shade, base }: OrderCost): string => JSON.stringify([batch, part, shade, base]);

/**
 * Which order of an earlier report each order is: same batch, part, shade and base; of several such, first
 * those of the same date, quantity and cost, then those of the same date and quantity, then of the same date, then the
 * rest, each in their order.
 */
function matches(before: readonly OrderCost[], now: readonly OrderCost[]): Map<OrderCost, OrderCost> {
  const waiting = new Map<string, OrderCost[]>();
  for (const order of before) {
    const alike = waiting.get(keyOf(order));
    if (alike) alike.push(order);
    else waiting.set(keyOf(order), [order]);
  }
  const found = new Map<OrderCost, OrderCost>();
  const take = (order: OrderCost, fits: (earlier: OrderCost) => boolean): void => {
    const candidates = waiting.get(keyOf(order)) ?? [];
    const at = candidates.findIndex(fits);
    if (at >= 0) found.set(order, candidates.splice(at, 1)[0]!);
  };
  const sameDay = (order: OrderCost, earlier: OrderCost): boolean => order.date === earlier.date;
  const sameSize = (order: OrderCost, earlier: OrderCost): boolean =>
    sameDay(order, earlier) && order.quantity === earlier.quantity;
  const sameCost = (order: OrderCost, earlier: OrderCost): boolean =>
    sameSize(order, earlier) && isSame(earlier.costPerPart, order.costPerPart);
  for (const matching of [sameCost, sameSize, sameDay, () => true])
    for (const order of now) if (!found.has(order)) take(order, (earlier) => matching(order, earlier));
  return found;
}

function changeOf(
  before: OrderCost,
  now: OrderCost,
): Pick<OrderChange, "status" | "change" | "lines" | "causes"> {
  const [was, is] = [before.costPerPart, now.costPerPart];
  if (was === null || is === null)
    return { status: was === is ? "same" : "changed", change: null, lines: null, causes: [] };
  const change = is - was;
  if (isSame(was, is) && (before.price ?? null) === (now.price ?? null))
    return { status: "same", change: 0, lines: null, causes: [] };
  const both = before.lines !== null && now.lines !== null;
  return {
    status: "changed",
    change,
    lines: both
      ? byLine((line) => now.lines![line] / now.quantity - before.lines![line] / before.quantity)
      : null,
    causes: both ? causesOf(before, now) : [],
  };
}

function row(before: OrderCost | undefined, now: OrderCost | undefined): OrderChange {
  const { batch, date, order, part, shade, base } = (now ?? before)!;
  const known = {
    batch,
    date,
    order,
    part,
    shade,
    base,
    quantityBefore: before?.quantity ?? null,
    quantityNow: now?.quantity ?? null,
    totalBefore: before?.total ?? null,
    totalNow: now?.total ?? null,
    costBefore: before?.costPerPart ?? null,
    costNow: now?.costPerPart ?? null,
    priceBefore: before?.price ?? null,
    priceNow: now?.price ?? null,
  };
  if (before && now) return { ...known, ...changeOf(before, now) };
  return { ...known, status: now ? "new" : "gone", change: null, lines: null, causes: [] };
}

/** What changed from one cost report to the next, order by order: those of now first, then those that are gone. */
export function compareCosts(before: CostSnapshot, now: CostSnapshot): Outcome<CostComparison> {
  if (before.currency !== null && now.currency !== null && before.currency !== now.currency)
    return failed(
      error(
        "mixed-currencies",
        [],
        `the earlier report is in ${before.currency} and this one in ${now.currency}: amounts of unlike currencies cannot be compared`,
        "compare with a report in the same currency",
      ),
    );
  const known = matches(before.orders, now.orders);
  const matched = new Set(known.values());
  const orders = [
    ...now.orders.map((order) => row(known.get(order), order)),
    ...before.orders.filter((order) => !matched.has(order)).map((order) => row(order, undefined)),
  ];
  const count = (status: ChangeStatus): number => orders.filter((order) => order.status === status).length;
  const total = (of: CostSnapshot): number => exactSumOf(of.orders, (order) => order.total ?? 0);
  return done({
    currency: now.currency ?? before.currency,
    orders,
    counts: { changed: count("changed"), same: count("same"), new: count("new"), gone: count("gone") },
    totalBefore: total(before),
    totalNow: total(now),
  });
}
