import { type CsvStyle, csv } from "../format/csv.js";
import type { Limit, PairHeader, PairRow, PairsSummary } from "./pair.js";
import { pairData } from "./pair-data.js";
import { pairsTable } from "./pairs-table.js";

/** Writes a file of pairs piece by piece. */
export interface PairWriter {
  readonly head: (header: PairHeader) => string;
  readonly rows: (header: PairHeader, rows: readonly PairRow[]) => string;
  readonly tail: (summary: PairsSummary) => string;
}

/** CSV or TSV: the columns of the file, then those added. */
export const csvPairs = (style: CsvStyle, limit: Limit | undefined): PairWriter => ({
  head: (header) => csv(pairsTable(header, [], limit), style),
  rows: (header, rows) => (rows.length === 0 ? "" : csv(pairsTable(header, rows, limit), style, false)),
  tail: () => "",
});

/** One JSON value a line, one line a row. */
export const ndjsonPairs = (limit: Limit | undefined): PairWriter => ({
  head: () => "",
  rows: (header, rows) => rows.map((row) => `${JSON.stringify(pairData(header, row, limit))}\n`).join(""),
  tail: () => "",
});

/** One JSON object, its list of pairs a line each. */
export function jsonPairs(limit: Limit | undefined): PairWriter {
  let first = true;
  const list = (header: PairHeader, row: PairRow): string => {
    const lead = first ? "\n" : ",\n";
    first = false;
    return `${lead}    ${JSON.stringify(pairData(header, row, limit))}`;
  };
  return {
    head: () =>
      `{\n  "schema": "dipwright/compare-pairs@1",\n  "limit": ${JSON.stringify(limit ?? null)},\n  "pairs": [`,
    rows: (header, rows) => rows.map((row) => list(header, row)).join(""),
    tail: (summary) => `${first ? "" : "\n  "}],\n  "summary": ${JSON.stringify(summary)}\n}\n`,
  };
}
