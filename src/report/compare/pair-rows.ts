import type { RowReport } from "../row-report.js";
import type { Limit, PairHeader, PairRow } from "./pair.js";
import { pairData } from "./pair-data.js";
import { pairsTable } from "./pairs-table.js";

/** Compared pairs, some at a time: the columns of the file, then those added. */
export function pairRows(header: PairHeader, limit: Limit | undefined): RowReport<readonly PairRow[]> {
  const records = (pairs: readonly PairRow[]) => pairs.map((pair) => pairData(header, pair, limit));
  return {
    name: "compare-pairs",
    head: { limit: limit ?? null },
    list: "pairs",
    columns: pairsTable(header, [], limit).columns,
    cells: (pairs) => pairsTable(header, pairs, limit).rows,
    records,
    lines: records,
  };
}
