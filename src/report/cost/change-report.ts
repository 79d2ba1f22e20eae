import type { CostCause } from "../../core/cost/history/causes.js";
import type { CostComparison, OrderChange } from "../../core/cost/history/compare.js";
import { costLines } from "../../core/cost/line/cost-lines.js";
import { exactSumOf } from "../../core/maths/exact-sum.js";
import { minorDigits } from "../../core/quantity/currencies.js";
import { counted } from "../../core/quantity/text/counted.js";
import { schemaName } from "../format/json.js";
import type { Block, Report } from "../report.js";
import type { Cell, Column, Table } from "../table.js";
import { trimmed } from "../words/digits.js";
import { money } from "../words/money.js";
import { basesShown } from "./bases-shown.js";
import { causeInWords, signedMoney } from "./cause-words.js";
import { countColumn, lineColumns, moneyColumn, textColumn } from "./columns.js";

/** Most causes in one cell. */
const said = 3;

const percentColumn: Column = {
  key: "change_percent",
  title: "change",
  unit: "%",
  digits: (value) => trimmed(value, 1),
};

const percentOf = ({ change, costBefore }: OrderChange): number | null =>
  change === null || !costBefore ? null : (100 * change) / costBefore;

/** Causes of one code as one, whichever lines they moved; the largest first. */
function byCode(causes: readonly CostCause[]): CostCause[] {
  const found = new Map<string, CostCause>();
  for (const cause of causes) {
    const known = found.get(cause.code);
    found.set(cause.code, known ? { ...known, change: known.change + cause.change } : cause);
  }
  return [...found.values()].sort((a, b) => Math.abs(b.change) - Math.abs(a.change));
}

/** The largest causes that show at the currency's minor unit, or the largest of all, and what the others come to. */
function causeText(
  { causes, status, change, priceBefore, priceNow }: OrderChange,
  currency: string | null,
): string | null {
  if (status !== "changed") return null;
  const least = 0.5 * 10 ** -(currency === null ? 2 : minorDigits(currency));
  const all = byCode(causes);
  const visible = all.filter((cause) => Math.abs(cause.change) >= least).slice(0, said);
  const shown = visible.length > 0 || priceBefore !== priceNow ? visible : all.slice(0, 1);
  const rest = exactSumOf(
    all.filter((cause) => !shown.includes(cause)),
    (cause) => cause.change,
  );
  const others = Math.abs(rest) >= least ? [`other causes ${signedMoney(rest, currency)}`] : [];
  if (shown.length > 0) return [...shown.map((cause) => causeInWords(cause, currency)), ...others].join("; ");
  if (change === null || Math.abs(change) >= least || priceBefore === priceNow) return null;
  const price = (value: number | null): string => (value === null ? "none" : money(value, currency));
  return `pricing: price ${price(priceBefore)} -> ${price(priceNow)}`;
}

/** Every order of both reports, one row each. */
function rows({ orders, currency }: CostComparison): Table {
  const amount = moneyColumn(currency);
  return {
    columns: [
      ...["batch", "date"].map(textColumn),
      countColumn("order"),
      ...["part", "shade", "base", "status"].map(textColumn),
      ...["quantity_before", "quantity"].map(countColumn),
      ...["total_before", "total"].map(amount),
      ...["cost_per_part_before", "cost_per_part", "change"].map(amount),
      percentColumn,
      ...lineColumns.map((name) => amount(`${name}_change`)),
      ...["price_before", "price"].map(amount),
      textColumn("causes"),
    ],
    rows: orders.map((order): Cell[] => [
      order.batch,
      order.date,
      order.order,
      order.part,
      order.shade,
      order.base,
      order.status,
      order.quantityBefore,
      order.quantityNow,
      order.totalBefore,
      order.totalNow,
      order.costBefore,
      order.costNow,
      order.change,
      percentOf(order),
      ...costLines.map((line) => order.lines?.[line] ?? null),
      order.priceBefore,
      order.priceNow,
      causeText(order, currency),
    ]),
  };
}

/** That orders of files which could not be costed look like others. */
const missing = (which: string, files: number, among: string, sum: string): Block => ({
  kind: "paragraph",
  text: `${which}: orders of ${files === 1 ? "it" : "them"} are listed as ${among}, and are missing from the sum ${sum}.`,
});

/** The table for 80 columns; the causes are below it, a line an order. */
const narrow = ["batch", "order", "part", "shade", "status", "before", "now", "change"];
const short: Readonly<Record<string, string>> = { "cost per part before": "before", "cost per part": "now" };

const causeLines = ({ orders, currency }: CostComparison): string[] =>
  orders.flatMap((order) => {
    const causes = causeText(order, currency);
    return causes === null ? [] : [`${order.batch} ${order.order}, ${order.part} ${order.shade}: ${causes}.`];
  });

/**
 * What costs more or less than in an earlier report, and why. Orders that are the same are left out for people.
 * `bad`: files that could not be costed now, whose orders are not known to be gone; `badBefore`: those that the
 * earlier report left out, whose orders are not known to be new.
 */
export function costChangeReport(comparison: CostComparison, bad = 0, badBefore = 0): Report {
  const { currency, counts, totalBefore, totalNow, orders } = comparison;
  const table = rows(comparison);
  const titled = table.columns.map((column) => ({ ...column, title: short[column.title] ?? column.title }));
  const titles = basesShown(orders) ? [...narrow, "base"] : narrow;
  const kept = titled.flatMap(({ title }, i) => (titles.includes(title) ? [i] : []));
  const differing: Table = {
    columns: kept.map((i) => titled[i]!),
    rows: table.rows.filter((_, i) => orders[i]!.status !== "same").map((row) => kept.map((i) => row[i]!)),
  };
  const causes = causeLines(comparison);
  const summary = `${counts.changed} changed, ${counts.same} the same, ${counts.new} new, ${counts.gone} gone; all orders together ${money(totalBefore, currency)} before, ${money(totalNow, currency)} now.`;
  const blocks: Block[] = [
    { kind: "heading", level: 1, text: "Costs against the earlier report" },
    { kind: "paragraph", text: summary },
    ...(bad > 0 && counts.gone > 0
      ? [missing(`${counted(bad, "file")} could not be costed`, bad, "gone", "now")]
      : []),
    ...(badBefore > 0 && counts.new > 0
      ? [missing(`The earlier report left out ${counted(badBefore, "file")}`, badBefore, "new", "before")]
      : []),
    ...(differing.rows.length > 0 ? [{ kind: "table" as const, table: differing }] : []),
    ...(causes.length > 0
      ? [
          { kind: "heading" as const, level: 2 as const, text: "Causes, per good part" },
          { kind: "list" as const, items: causes },
        ]
      : []),
  ];
  return {
    name: "cost-change",
    data: {
      currency,
      filesNotCosted: bad,
      filesNotCostedBefore: badBefore,
      counts,
      totalBefore,
      totalNow,
      orders,
    },
    rows: table,
    lines: orders.map((order) => ({ schema: schemaName("cost-change-order"), currency, ...order })),
    blocks,
  };
}
