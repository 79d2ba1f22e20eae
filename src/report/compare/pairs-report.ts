import { screenColour } from "../../core/colour/screen/screen-swatch.js";
import type { Reading } from "../../core/model/colour.js";
import type { Report } from "../report.js";
import type { Cell, Column } from "../table.js";
import { differences, furtherDifferences, verdictColumn } from "./added-columns.js";
import { type Limit, type PairHeader, type PairRow, type PairsSummary, verdictOf } from "./pair.js";
import { pairsSaid } from "./pairs-said.js";
import { pairsTable } from "./pairs-table.js";

const parts = ["deltaL", "deltaC", "deltaH"];

/**
 * A file of pairs for people: the columns that name a row, the colours side by side, the difference by the formula
 * that judges (else CIEDE2000) and its parts; the other formulas are in CSV and JSON.
 */
export function pairsReport(
  header: PairHeader,
  rows: readonly PairRow[],
  summary: PairsSummary,
  { reading, limit }: { readonly reading: Reading; readonly limit?: Limit },
): Report {
  const read = [limit?.formula ?? "ciede2000", ...parts];
  const wanted = [...differences, ...furtherDifferences].filter(({ column }) => read.includes(column.key));
  const naming = header.names.flatMap((name, i) => (header.columns.includes(i) ? [] : [{ name, i }]));
  const columns: Column[] = [
    { key: "row", title: "row", digits: String },
    ...naming.map(({ name }) => ({ key: name, title: name })),
    { key: "standard", title: "standard", swatch: true },
    { key: "sample", title: "sample", swatch: true },
    ...wanted.map(({ column }) => column),
    ...(limit === undefined ? [] : [verdictColumn]),
  ];
  const cells = (row: PairRow): Cell[] => [
    row.row,
    ...naming.map(({ i }) => row.cells[i] ?? ""),
    screenColour(row.standard, reading).hex,
    screenColour(row.sample, reading).hex,
    ...wanted.map(({ of }) => of(row)),
    ...(limit === undefined ? [] : [verdictOf(row, limit)]),
  ];
  return {
    name: "compare-pairs",
    data: {},
    rows: pairsTable(header, rows, limit),
    blocks: [
      { kind: "table", table: { columns, rows: rows.map(cells) } },
      { kind: "paragraph", text: pairsSaid(summary, limit) },
    ],
  };
}
