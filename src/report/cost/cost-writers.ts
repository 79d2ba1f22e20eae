import { done, type Outcome } from "../../core/fault.js";
import { mapped } from "../../core/mapped.js";
import { type CsvStyle, csv } from "../format/csv.js";
import { onlyFinite } from "../format/json.js";
import { ndjsonLine } from "../format/ndjson.js";
import { columnPositions } from "../select-columns.js";
import type { Cell, Table } from "../table.js";
import { costColumns, costRow, onlyAsked } from "./columns.js";
import { batchRecord, type CostEntry, orderRecords } from "./entry.js";

/** Writes costs batch by batch, so that their number takes no memory. */
export interface CostWriter {
  /** What comes before the first batch. */
  readonly head: () => string;
  readonly entry: (entry: CostEntry) => string;
  /** In pieces, since it may be long; with the count of files that could not be costed. */
  readonly tail: (filesNotCosted: number) => Iterable<string>;
}

function line(record: unknown): string {
  onlyFinite("cost", record);
  return JSON.stringify(record);
}

/** One JSON value a line, one line an order; what its batch gives no price for, where there is any. */
export const ndjsonCosts = (): CostWriter => ({
  head: () => "",
  entry: (entry) =>
    mapped(orderRecords(entry), (record) =>
      ndjsonLine("cost-order", {
        currency: entry.currency,
        ...record,
        ...(entry.notCounted.length > 0 ? { notCounted: entry.notCounted } : {}),
      }),
    ).join(""),
  tail: () => [],
});

/**
 * One JSON object with a line an order; what is known of the batches as such comes at its end, and is kept until
 * then as the bytes it will be written in, 1 to 2 kB a batch.
 */
export function jsonCosts(currency: string | null): CostWriter {
  const batches: Uint8Array[] = [];
  let orders = 0;
  const utf8 = new TextEncoder();
  return {
    head: () =>
      `{\n  "schema": "dipwright/cost@1",\n  "currency": ${JSON.stringify(currency)},\n  "orders": [`,
    entry: (entry) => {
      batches.push(utf8.encode(line(batchRecord(entry))));
      return mapped(
        orderRecords(entry),
        (record) => `${orders++ === 0 ? "\n" : ",\n"}    ${line(record)}`,
      ).join("");
    },
    *tail(filesNotCosted) {
      const text = new TextDecoder();
      yield `${orders === 0 ? "" : "\n  "}],\n  "batches": [`;
      for (const [i, batch] of batches.entries()) yield `${i === 0 ? "\n" : ",\n"}    ${text.decode(batch)}`;
      yield `${batches.length === 0 ? "" : "\n  "}],\n  "filesNotCosted": ${filesNotCosted}\n}\n`;
    },
  };
}

/** CSV or TSV; an unknown name among the columns asked for is a fault. */
export function csvCosts(
  style: CsvStyle,
  currency: string | null,
  spread: boolean,
  names: readonly string[] | undefined,
): Outcome<CostWriter> {
  const columns = costColumns(currency, spread);
  const positions = columnPositions(
    columns,
    names ?? mapped(columns, ({ key }) => key).filter((key) => key !== onlyAsked),
  );
  if (!positions.ok) return positions;
  const kept = positions.value;
  const table = (rows: readonly (readonly Cell[])[]): Table => ({
    columns: mapped(kept, (i) => columns[i]!),
    rows: mapped(rows, (row) => mapped(kept, (i) => row[i]!)),
  });
  const rowsOf = ({ orders, spread: drawn }: CostEntry): Cell[][] =>
    mapped(orders, (order, i) =>
      costRow(order, spread ? (drawn?.outputs.costPerPart?.[i] ?? null) : undefined),
    );
  return done({
    head: () => csv(table([]), style),
    entry: (entry) => (entry.orders.length === 0 ? "" : csv(table(rowsOf(entry)), style, false)),
    tail: () => [],
  });
}
