import { restsThatMatter } from "../../core/cost/assumed-shares.js";
import { paragraph, type Report } from "../report.js";
import type { Table } from "../table.js";
import { assumedBlocks, footnote, mark, notCountedBlocks } from "../words/assumed.js";
import { priceTitle } from "../words/price.js";
import { basesShown } from "./bases-shown.js";
import { costColumns, costRow } from "./columns.js";
import { batchRecord, type CostEntry, orderRecords } from "./entry.js";
import { offerBlocks } from "./offer-blocks.js";
import { spreadBlocks } from "./spread-blocks.js";

/** The currency that all batches share; null where no money was given. */
export const currencyOf = (entries: readonly Pick<CostEntry, "currency">[]): string | null =>
  entries.find(({ currency }) => currency !== null)?.currency ?? null;

/** One row an order over all batches; money columns name the currency, which all batches share. */
function costTable(entries: readonly CostEntry[]): Table {
  const spread = entries.some((entry) => entry.spread !== undefined);
  return {
    columns: costColumns(currencyOf(entries), spread).map((column) =>
      column.title === "price"
        ? { ...column, title: priceTitle(entries.flatMap(({ orders }) => orders)) }
        : column,
    ),
    rows: entries.flatMap((entry) =>
      entry.orders.map((order, i) =>
        costRow(order, spread ? (entry.spread?.outputs.costPerPart?.[i] ?? null) : undefined),
      ),
    ),
  };
}

/** What each order costs, over one or many batches, and how sure that is where it was drawn. */
export function costReportOf(entries: readonly CostEntry[]): Report {
  const rows = costTable(entries);
  const orders = entries.flatMap((entry) => entry.orders);
  const naming = ["batch", "order", "part", "shade", ...(basesShown(orders) ? ["base"] : [])];
  const narrow = [...naming, "quantity", "cost per part", "total", priceTitle(orders)];
  const money = narrow.slice(-3);
  // A mark on the column says it of all rows: what was assumed carries enough of the cost of a batch in it.
  const rests = [
    ...new Set(entries.flatMap(({ totals }) => restsThatMatter(totals.restsOnAssumed, totals.assumedShares))),
  ];
  const kept = rows.columns.flatMap((column, i) => (narrow.includes(column.title) ? [i] : []));
  const short: Table = {
    columns: kept.map((i) => {
      const column = rows.columns[i]!;
      return money.includes(column.title) ? { ...column, title: `${column.title}${mark(rests)}` } : column;
    }),
    rows: rows.rows.map((row) => kept.map((i) => row[i]!)),
  };
  const currency = currencyOf(entries);
  const uncounted = [...new Set(entries.flatMap((entry) => entry.notCounted))];
  return {
    name: "cost",
    data: { currency, orders: entries.flatMap(orderRecords), batches: entries.map(batchRecord) },
    rows,
    blocks: [
      { kind: "heading", level: 1, text: currency === null ? "Costs" : `Costs in ${currency}` },
      { kind: "table", table: short },
      ...(rests.length > 0 ? [paragraph(footnote(rests)!)] : []),
      ...spreadBlocks(entries, currency),
      ...offerBlocks(entries, currency),
      ...notCountedBlocks(uncounted),
      ...assumedBlocks(entries.flatMap((entry) => entry.assumptions)),
    ],
  };
}
