import { mapped } from "../mapped.js";
import { exactSum } from "../maths/exact-sum.js";
import type { CostItem } from "./items.js";
import type { CostLine } from "./line/cost-lines.js";
import { byLine, type CostSheet } from "./line/cost-sheet.js";

const noAmounts = (): Record<CostLine, number[]> => byLine(() => []);

/** Two numbers add up as exactly as can be without help. */
const sumOf = (amounts: readonly number[]): number =>
  amounts.length <= 2 ? (amounts[0] ?? 0) + (amounts[1] ?? 0) : exactSum(amounts);

const summed = (amounts: Record<CostLine, number[]>): CostSheet => byLine((line) => sumOf(amounts[line]));

/**
 * Splits every item over its orders by weight; returns one sheet per order index. An item without weight is
 * split evenly. The order of the items does not matter.
 */
export function allocate(items: readonly CostItem[], orders: number): CostSheet[] {
  const sheets = Array.from({ length: orders }, noAmounts);
  // Items of one bath hold the same list of shares: its sum is formed once.
  const totals = new Map<CostItem["shares"], number>();
  for (const { line, amount, shares } of items) {
    const total = totals.get(shares) ?? sumOf(mapped(shares, (share) => share.weight));
    totals.set(shares, total);
    for (const { order, weight } of shares)
      sheets[order]![line].push(total > 0 ? amount * (weight / total) : amount / shares.length);
  }
  return mapped(sheets, summed);
}

/** What was paid in all, by line, counted from the items themselves and not from the orders. */
export function sheetOf(items: readonly CostItem[]): CostSheet {
  const sheet = noAmounts();
  for (const { line, amount } of items) sheet[line].push(amount);
  return summed(sheet);
}
