import { mapped } from "../mapped.js";
import { exactSum, exactSumOf } from "../maths/exact-sum.js";
import { type CostItem, type CostLine, costLines } from "./items.js";

export type CostSheet = Record<CostLine, number>;

/** Something of each line, by name: an object made so is a fraction of the cost of one made from entries. */
const byLine = <T>(of: (line: CostLine) => T): Record<CostLine, T> => ({
  blank: of("blank"),
  dye: of("dye"),
  water: of("water"),
  energy: of("energy"),
  labour: of("labour"),
  consumables: of("consumables"),
  equipment: of("equipment"),
  disposal: of("disposal"),
});

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

/** The sum of a sheet. */
export const sheetTotal = (sheet: CostSheet): number => exactSumOf(costLines, (line) => sheet[line]);
