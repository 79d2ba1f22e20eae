import { exactSumOf } from "../../maths/exact-sum.js";
import type { CostLine } from "../items.js";
import { costLines } from "../items.js";
import { productChange } from "./log-mean.js";
import type { CostDrivers, OrderCost } from "./snapshot.js";

/** What a change of cost comes from. A price is what a unit costs, an amount how much of it a good part takes. */
export type CauseCode =
  | "blank-price"
  | "yield"
  | "dye-price"
  | "dye-amount"
  | "water-price"
  | "water-amount"
  | "electricity-price"
  | "energy-amount"
  | "labour-rate"
  | "load-size"
  | "strength"
  | "dip-time"
  | "handling-time"
  | "set-up-share"
  | "consumables"
  | "equipment"
  | "disposal-price"
  | "disposal-amount";

/** One cause and by how much it moved the cost of a good part; the figure itself before and now. */
export interface CostCause {
  readonly code: CauseCode;
  readonly line: CostLine;
  readonly change: number;
  readonly before: number;
  readonly now: number;
}

interface Factor {
  readonly code: CauseCode;
  readonly before: number;
  readonly now: number;
  /** What enters the product where that is not the figure itself. */
  readonly as?: (figure: number) => number;
}

/** A changed strength counts as the reason for a longer or shorter dip from here on. */
const strengthMoved = 0.002;

const costed = ({ lines }: OrderCost, line: CostLine): number => lines?.[line] ?? 0;
const perGood = (order: OrderCost, amount: number): number => amount / order.quantity;
const inverse = (figure: number): number => 1 / figure;

/** Splits the change of factors' product; all to the last one, the amount, where a factor is zero. */
function split(line: CostLine, change: number, factors: readonly Factor[]): CostCause[] {
  const value = ({ as = (figure) => figure }: Factor, figure: number): number => as(figure);
  const parts = productChange(
    factors.map((factor) => value(factor, factor.before)),
    factors.map((factor) => value(factor, factor.now)),
  );
  return factors.map(({ code, before, now }, i) => ({
    code,
    line,
    before,
    now,
    change: parts ? parts[i]! : i === factors.length - 1 ? change : 0,
  }));
}

/** A line that is a price times an amount; all to the price where one is known in one of the reports only. */
function priced(
  line: CostLine,
  [before, now]: Pair,
  codes: readonly [price: CauseCode, amount: CauseCode],
  price: (drivers: CostDrivers) => number | null,
): CostCause[] {
  const [was, is] = [before, now].map((order) => perGood(order, costed(order, line))) as [number, number];
  const known = (order: OrderCost): number => (order.drivers && price(order.drivers)) || 0;
  const [wasPrice, isPrice] = [known(before), known(now)];
  if (!(wasPrice > 0 && isPrice > 0))
    return split(line, is - was, [
      wasPrice === isPrice
        ? { code: codes[1], before: was, now: is }
        : { code: codes[0], before: wasPrice, now: isPrice },
    ]);
  return split(line, is - was, [
    { code: codes[0], before: wasPrice, now: isPrice },
    { code: codes[1], before: was / wasPrice, now: is / isPrice },
  ]);
}

type Pair = readonly [before: OrderCost, now: OrderCost];

const yieldFactor = ([before, now]: Pair): Factor => ({
  code: "yield",
  before: before.started / before.quantity,
  now: now.started / now.quantity,
});

function blankCauses([before, now]: Pair): CostCause[] {
  const each = (order: OrderCost): number => costed(order, "blank") / order.started;
  const change = perGood(now, costed(now, "blank")) - perGood(before, costed(before, "blank"));
  return split("blank", change, [
    yieldFactor([before, now]),
    { code: "blank-price", before: each(before), now: each(now) },
  ]);
}

/** The loads' share of labour is known to the second; the rest is set-up, cleaning and the dryer. */
function labourCauses([before, now]: Pair): CostCause[] {
  const [was, is] = [before.drivers, now.drivers];
  const whole = [before, now].map((order) => perGood(order, costed(order, "labour"))) as [number, number];
  if (!was || !is || !(was.labourPerHour! > 0 && is.labourPerHour! > 0))
    return split("labour", whole[1] - whole[0], [{ code: "set-up-share", before: whole[0], now: whole[1] }]);
  const dipping = (order: OrderCost, drivers: CostDrivers): number =>
    perGood(order, (drivers.labourPerHour! * drivers.cycleSeconds * drivers.loads) / 3600);
  const [wasDipping, isDipping] = [dipping(before, was), dipping(now, is)];
  const rate: Factor = { code: "labour-rate", before: was.labourPerHour!, now: is.labourPerHour! };
  const minutes = (line: number, drivers: CostDrivers): number =>
    (60 * Math.max(0, line)) / drivers.labourPerHour!;
  const loads = split("labour", isDipping - wasDipping, [
    rate,
    { code: "load-size", before: was.partsPerLoad, now: is.partsPerLoad, as: inverse },
    yieldFactor([before, now]),
    { code: "dip-time", before: was.cycleSeconds, now: is.cycleSeconds, as: (seconds) => seconds / 3600 },
  ]);
  return [
    ...loads.flatMap((cause) => (cause.code === "dip-time" ? cycleCauses(cause, was, is) : [cause])),
    ...split("labour", whole[1] - isDipping - (whole[0] - wasDipping), [
      rate,
      {
        code: "set-up-share",
        before: minutes(whole[0] - wasDipping, was),
        now: minutes(whole[1] - isDipping, is),
        as: (spent) => spent / 60,
      },
    ]),
  ];
}

/** A longer cycle is a longer dip, of a weaker bath or not, or longer handling. */
function cycleCauses(cause: CostCause, was: CostDrivers, is: CostDrivers): CostCause[] {
  const cycle = is.cycleSeconds - was.cycleSeconds;
  const dip = is.dipSeconds - was.dipSeconds;
  const share = cycle === 0 ? 0 : dip / cycle;
  const moved = is.strength - was.strength;
  const weaker = Math.abs(moved) >= strengthMoved && moved * dip < 0;
  return [
    weaker
      ? { ...cause, code: "strength", change: cause.change * share, before: was.strength, now: is.strength }
      : { ...cause, change: cause.change * share, before: was.dipSeconds, now: is.dipSeconds },
    {
      ...cause,
      code: "handling-time",
      change: cause.change * (1 - share),
      before: was.cycleSeconds - was.dipSeconds,
      now: is.cycleSeconds - is.dipSeconds,
    },
  ];
}

/** Causes of one code and line as one; those that moved nothing left out; the largest first. */
function merged(causes: readonly CostCause[]): CostCause[] {
  const kept = new Map<string, CostCause[]>();
  for (const cause of causes) {
    const key = `${cause.line} ${cause.code}`;
    kept.set(key, [...(kept.get(key) ?? []), cause]);
  }
  return [...kept.values()]
    .map((same) => ({ ...same[0]!, change: exactSumOf(same, ({ change }) => change) }))
    .filter(({ change }) => Math.abs(change) > 1e-9)
    .sort(
      (a, b) =>
        Math.abs(b.change) - Math.abs(a.change) || costLines.indexOf(a.line) - costLines.indexOf(b.line),
    );
}

/**
 * What moved the cost of a good part of an order between two reports. The changes add up to the change of the
 * cost; where prices and amounts changed together, each gets its part by the logarithmic mean.
 * @source ang2005
 */
export function causesOf(before: OrderCost, now: OrderCost): CostCause[] {
  const pair: Pair = [before, now];
  return merged([
    ...blankCauses(pair),
    ...priced("dye", pair, ["dye-price", "dye-amount"], ({ dyePrice }) => dyePrice),
    ...priced("water", pair, ["water-price", "water-amount"], ({ waterPerM3 }) => waterPerM3),
    ...priced(
      "energy",
      pair,
      ["electricity-price", "energy-amount"],
      ({ electricityPerKwh }) => electricityPerKwh,
    ),
    ...labourCauses(pair),
    ...priced("consumables", pair, ["consumables", "consumables"], () => null),
    ...priced("equipment", pair, ["equipment", "equipment"], () => null),
    ...priced("disposal", pair, ["disposal-price", "disposal-amount"], ({ disposalPerL }) => disposalPerL),
  ]);
}
