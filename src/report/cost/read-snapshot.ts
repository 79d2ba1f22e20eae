import type { CostDrivers, CostSnapshot, OrderCost } from "../../core/cost/history/snapshot.js";
import { costLines } from "../../core/cost/items.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";

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
const orderKeys: Readonly<Record<string, (value: unknown) => boolean>> = {
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
  lines: (value) => value === null || (isObject(value) && costLines.every((line) => isNumber(value[line]))),
};

const driverKeys: { readonly [K in keyof CostDrivers]: (value: unknown) => boolean } = {
  dye: orNull(isText),
  dyePrice: orNull(isNumber),
  loads: isCount,
  partsPerLoad: isCount,
  dipSeconds: isNumber,
  cycleSeconds: isNumber,
  strength: isNumber,
  electricityPerKwh: orNull(isNumber),
  waterPerM3: orNull(isNumber),
  labourPerHour: orNull(isNumber),
  disposalPerL: orNull(isNumber),
};

const help = "give a file that `dipwright cost --format json` wrote";
const fault = (message: string): Fault => error("not-a-cost-report", [], message, help);

/** An order as it was written, or the name of the key that is not what it must be. */
function orderOf(value: unknown): OrderCost | string {
  if (!isObject(value)) return "order";
  const wrong = Object.entries(orderKeys).find(([key, holds]) => !holds(value[key]));
  if (wrong) return wrong[0];
  const { drivers } = value;
  const whole = isObject(drivers) && Object.entries(driverKeys).every(([key, holds]) => holds(drivers[key]));
  return { ...(value as unknown as OrderCost), drivers: whole ? (drivers as unknown as CostDrivers) : null };
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
