import { exactSum } from "../maths/exact-sum.js";
import { type CostItem, type CostLine, costLines } from "./items.js";

export type CostSheet = Record<CostLine, number>;

const sheetFrom = (amountOf: (line: CostLine) => number): CostSheet =>
  Object.fromEntries(costLines.map((line) => [line, amountOf(line)])) as CostSheet;

/**
 * Splits every item over its orders by weight; returns one sheet per order index. An item without weight is
 * split evenly. The order of the items does not matter.
 */
export function allocate(items: readonly CostItem[], orders: number): CostSheet[] {
  const amounts = Array.from({ length: orders }, () => new Map<CostLine, number[]>());
  const add = (order: number, line: CostLine, amount: number): void => {
    const known = amounts[order]!.get(line);
    if (known) known.push(amount);
    else amounts[order]!.set(line, [amount]);
  };
  for (const { line, amount, shares } of items) {
    const total = exactSum(shares.map((share) => share.weight));
    for (const { order, weight } of shares)
      add(order, line, total > 0 ? (amount * weight) / total : amount / shares.length);
  }
  return amounts.map((lines) => sheetFrom((line) => exactSum(lines.get(line) ?? [])));
}

/** What was paid in all, by line, counted from the items themselves and not from the orders. */
export const sheetOf = (items: readonly CostItem[]): CostSheet =>
  sheetFrom((line) => exactSum(items.flatMap((item) => (item.line === line ? [item.amount] : []))));

/** The sum of a sheet. */
export const sheetTotal = (sheet: CostSheet): number => exactSum(costLines.map((line) => sheet[line]));
