import type { OrderCost } from "../../core/cost/history/snapshot.js";
import { costLines, lineRecords } from "../../core/cost/line/cost-lines.js";
import type { Percentiles } from "../../core/cost/spread/spread.js";
import { mapped } from "../../core/mapped.js";
import type { Cell, Column } from "../table.js";
import { restsInCell } from "../words/assumed.js";
import { decimals } from "../words/digits.js";
import { moneyDigits } from "../words/money.js";

const whole = (value: number): string => decimals(value, 0);

/** A column of text, its key its title. */
export const textColumn = (key: string): Column => ({ key, title: key });

/** A column of whole numbers. */
export const countColumn = (key: string): Column => ({ key, title: key, digits: whole });

/** Columns of money, the currency at the end of the key. */
export const moneyColumn =
  (currency: string | null) =>
  (name: string): Column => ({
    key: currency === null ? name : `${name}_${currency}`,
    title: name.replaceAll("_", " "),
    digits: moneyDigits(currency),
  });

/** The names of the cost lines as columns have them. */
export const lineColumns: readonly string[] = costLines.map((line) =>
  lineRecords[line].title.replaceAll(" ", "_"),
);

const percentiles = ["p10", "p50", "p90"] as const;

/** A column that is shown where it is asked for: the assumed figures that an order's cost rests on. */
export const onlyAsked = "rests_on_assumed";

/** All columns of the cost table; with a spread also those of the cost of a good part in the draws. */
export const costColumns = (currency: string | null, spread: boolean): Column[] => [
  ...mapped(["batch", "date"], textColumn),
  countColumn("order"),
  ...mapped(["part", "shade", "base"], textColumn),
  ...mapped(["quantity", "started"], countColumn),
  ...mapped(
    ["cost_per_part", "total", ...lineColumns, "price", ...(spread ? percentiles : [])],
    moneyColumn(currency),
  ),
  textColumn(onlyAsked),
];

/** One order in those columns; its percentiles where the table has a spread. */
export const costRow = (order: OrderCost, spread?: Percentiles | null): Cell[] => [
  order.batch,
  order.date,
  order.order,
  order.part,
  order.shade,
  order.base,
  order.quantity,
  order.started,
  order.costPerPart,
  order.total,
  ...mapped(costLines, (line) => order.lines?.[line] ?? null),
  order.price ?? null,
  ...(spread === undefined ? [] : mapped(percentiles, (name) => spread?.[name] ?? null)),
  restsInCell(order.restsOnAssumed),
];
