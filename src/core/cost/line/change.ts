import type { CostDrivers, PriceDriver } from "./drivers.js";
import { productChange } from "./log-mean.js";

/** One cost line of an order, in one of two reports. */
export interface LineOfOrder {
  /** Money for the whole order. */
  readonly amount: number;
  /** Good parts. */
  readonly quantity: number;
  readonly started: number;
  /** Null where the report does not tell them. */
  readonly drivers: CostDrivers | null;
}

export type LineChange = readonly [before: LineOfOrder, now: LineOfOrder];

/** One cause and by how much it moved the cost of a good part; the figure itself before and now. */
export interface LineCause<Code extends string = string> {
  readonly code: Code;
  readonly before: number;
  readonly now: number;
  readonly change: number;
}

/** One factor of a line's cost. */
export interface Factor<Code extends string = string> {
  readonly code: Code;
  readonly before: number;
  readonly now: number;
  /** What enters the product where that is not the figure itself. */
  readonly as?: (figure: number) => number;
}

/** Money of a line for each good part. */
export const perGood = ({ amount, quantity }: LineOfOrder): number => amount / quantity;

/** Splits the change of a product of factors; all of it goes to the last one, the amount, where a factor is zero. */
export function splitChange<Code extends string>(
  change: number,
  factors: readonly Factor<Code>[],
): LineCause<Code>[] {
  const value = ({ as = (figure) => figure }: Factor, figure: number): number => as(figure);
  const parts = productChange(
    factors.map((factor) => value(factor, factor.before)),
    factors.map((factor) => value(factor, factor.now)),
  );
  return factors.map(({ code, before, now }, i) => ({
    code,
    before,
    now,
    change: parts ? parts[i]! : i === factors.length - 1 ? change : 0,
  }));
}

/** How parts that were started for each good one moved a line. */
export const yieldFactor = ([before, now]: LineChange): Factor<"yield"> => ({
  code: "yield",
  before: before.started / before.quantity,
  now: now.started / now.quantity,
});

/** Causes of a line that is a price times an amount; all to the price where only one of the reports knows it. */
export const priceAndAmount =
  <Code extends string>(driver: PriceDriver, price: Code, amount: Code) =>
  ([before, now]: LineChange): LineCause<Code>[] => {
    const [was, is] = [perGood(before), perGood(now)];
    const known = ({ drivers }: LineOfOrder): number => drivers?.[driver] || 0;
    const [wasPrice, isPrice] = [known(before), known(now)];
    if (!(wasPrice > 0 && isPrice > 0))
      return splitChange(is - was, [
        wasPrice === isPrice
          ? { code: amount, before: was, now: is }
          : { code: price, before: wasPrice, now: isPrice },
      ]);
    return splitChange(is - was, [
      { code: price, before: wasPrice, now: isPrice },
      { code: amount, before: was / wasPrice, now: is / isPrice },
    ]);
  };

/** The cause of a line without a price of its own: the line as a whole. */
export const wholeLine =
  <Code extends string>(code: Code) =>
  ([before, now]: LineChange): LineCause<Code>[] =>
    splitChange(perGood(now) - perGood(before), [{ code, before: perGood(before), now: perGood(now) }]);
