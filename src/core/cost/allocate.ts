import { type CostItem, type CostLine, costLines } from "./items.js";

export type CostSheet = Record<CostLine, number>;

const emptySheet = (): CostSheet => Object.fromEntries(costLines.map((line) => [line, 0])) as CostSheet;

/** Splits every item over its orders by weight; returns one sheet per order index. An item without weight is split evenly. */
export function allocate(items: readonly CostItem[], orders: number): CostSheet[] {
  const sheets = Array.from({ length: orders }, emptySheet);
  for (const { line, amount, shares } of items) {
    const total = shares.reduce((sum, share) => sum + share.weight, 0);
    for (const { order, weight } of shares)
      sheets[order]![line] += total > 0 ? (amount * weight) / total : amount / shares.length;
  }
  return sheets;
}

/** What was paid in all, by line, counted from the items themselves and not from the orders. */
export function sheetOf(items: readonly CostItem[]): CostSheet {
  const sheet = emptySheet();
  for (const { line, amount } of items) sheet[line] += amount;
  return sheet;
}

/** The sum of a sheet. */
export const sheetTotal = (sheet: CostSheet): number => costLines.reduce((sum, line) => sum + sheet[line], 0);
