import { done, type Outcome } from "../../core/fault.js";
import { mapped } from "../../core/mapped.js";
import { schemaName } from "../format/json.js";
import type { RowReport } from "../row-report.js";
import { columnPositions } from "../select-columns.js";
import { costColumns, costRow, onlyAsked } from "./columns.js";
import { batchRecord, type CostEntry, orderRecords } from "./entry.js";

/** Costs batch by batch, one row an order; an unknown name among the columns asked for is a fault. */
export function costRows(
  currency: string | null,
  spread: boolean,
  names: readonly string[] | undefined,
): Outcome<RowReport<CostEntry>> {
  const all = costColumns(currency, spread);
  const positions = columnPositions(
    all,
    names ?? mapped(all, ({ key }) => key).filter((key) => key !== onlyAsked),
  );
  if (!positions.ok) return positions;
  const kept = positions.value;
  return done({
    name: "cost",
    head: { currency },
    list: "orders",
    columns: mapped(kept, (i) => all[i]!),
    cells: ({ orders, spread: drawn }) =>
      mapped(orders, (order, i) => {
        const row = costRow(order, spread ? (drawn?.outputs.costPerPart?.[i] ?? null) : undefined);
        return mapped(kept, (at) => row[at]!);
      }),
    records: orderRecords,
    // Says what the batch has no price for, since no other line does.
    lines: (entry) =>
      mapped(orderRecords(entry), (record) => ({
        schema: schemaName("cost-order"),
        currency: entry.currency,
        ...record,
        ...(entry.notCounted.length > 0 ? { notCounted: entry.notCounted } : {}),
      })),
    also: { list: "batches", record: batchRecord },
  });
}
