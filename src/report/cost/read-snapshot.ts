import type { CostSnapshot, OrderCost } from "../../core/cost/history/snapshot.js";
import { byLine, type CostSheet } from "../../core/cost/line/cost-sheet.js";
import { type CostDrivers, type KnownRates, noRates } from "../../core/cost/line/drivers.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import { exactSum } from "../../core/maths/exact-sum.js";

type Unknown = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Unknown =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isText = (value: unknown): value is string => typeof value === "string";
const isNumber = (value: unknown): value is number => typeof value === "number";
const orNull =
  <T>(is: (value: unknown) => value is T) =>
  (value: unknown): value is T | null =>
    value === null || is(value);
const isCount = (value: unknown): value is number => isNumber(value) && value > 0;

/** What each key of an order must be; keys that are not named are taken as they are. */
const orderKeys: Readonly<Record<string, (value: unknown, order: Unknown) => boolean>> = {
  batch: isText,
  date: orNull(isText),
  order: isCount,
  part: isText,
  shade: isText,
  base: orNull(isText),
  quantity: isCount,
  started: isCount,
  costPerPart: orNull(isNumber),
  total: orNull(isNumber),
  price: (value) => value === undefined || isNumber(value),
  lines: (value, { total }) => value === null || (isObject(value) && addUpTo(total, Object.values(value))),
};

/** A line that is missing may be younger than the report; one that was lost leaves a gap to the total. */
const addUpTo = (total: unknown, amounts: readonly unknown[]): boolean =>
  isNumber(total) &&
  amounts.every(isNumber) &&
  Math.abs(exactSum(amounts) - total) <= 1e-6 * Math.max(1, Math.abs(total));

type Holds = (value: unknown) => boolean;

const rateKeys = Object.fromEntries(
  Object.keys(noRates).map((rate): [string, Holds] => [rate, orNull(isNumber)]),
) as Record<keyof KnownRates, Holds>;

/** What each driver must be; a price that is missing may be younger than the report, and is not known. */
const driverKeys: { readonly [K in keyof CostDrivers]: Holds } = {
  dye: orNull(isText),
  dyePrice: orNull(isNumber),
  loads: isCount,
  partsPerLoad: isCount,
  dipSeconds: isNumber,
  cycleSeconds: isNumber,
  strength: isNumber,
  ...rateKeys,
};

const help = "give a file that `dipwright cost --format json` wrote";
const fault = (message: string): Fault => error("not-a-cost-report", [], message, help);

/** The lines as a sheet of today; those that the report does not know yet cost nothing then. */
const sheetOf = (lines: Unknown | null): CostSheet | null =>
  lines && byLine((line) => (lines[line] ?? 0) as number);

/** The drivers where all are as they must be. */
function driversOf(given: unknown): CostDrivers | null {
  if (!isObject(given)) return null;
  const known = Object.keys(driverKeys).map((key) => [key, given[key] ?? null] as const);
  return known.every(([key, value]) => driverKeys[key as keyof CostDrivers](value))
    ? (Object.fromEntries(known) as unknown as CostDrivers)
    : null;
}

/** An order as it was written, or the name of the key that is not what it must be. */
function orderOf(value: unknown): OrderCost | string {
  if (!isObject(value)) return "order";
  const wrong = Object.entries(orderKeys).find(([key, holds]) => !holds(value[key], value));
  if (wrong) return wrong[0];
  return {
    ...(value as unknown as OrderCost),
    lines: sheetOf(value.lines as Unknown | null),
    drivers: driversOf(value.drivers),
  };
}

/** A cost report in JSON, as far as a comparison needs it. Its drivers may be missing; causes are then fewer. */
export function readCostSnapshot(text: string): Outcome<CostSnapshot> {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return failed(fault("the earlier report is not JSON"));
  }
  if (!isObject(data) || data.schema !== "dipwright/cost@1")
    return failed(fault('the earlier report is not a cost report: its schema is not "dipwright/cost@1"'));
  const { orders, currency, filesNotCosted = 0 } = data;
  if (!Array.isArray(orders) || !orNull(isText)(currency ?? null))
    return failed(fault("the earlier report has no list of orders, or no currency"));
  const read = orders.map(orderOf);
  const bad = read.findIndex(isText);
  if (bad >= 0)
    return failed(
      fault(
        `the earlier report is damaged: ${String(read[bad])} of its order ${bad + 1} is not what it should be`,
      ),
    );
  return done({
    currency: (currency ?? null) as string | null,
    orders: read as OrderCost[],
    filesNotCosted: isNumber(filesNotCosted) ? filesNotCosted : 0,
  });
}
