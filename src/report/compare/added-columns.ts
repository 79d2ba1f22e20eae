import type { Comparison } from "../../core/colour/difference/compare-colours.js";
import type { Cell, Column } from "../table.js";
import { decimals } from "../words/digits.js";
import { type Limit, verdictOf } from "./pair.js";

/** A number of a comparison and its column. */
export interface Difference {
  readonly column: Column;
  readonly of: (comparison: Comparison) => number;
}

const difference = (key: string, title: string, of: Difference["of"]): Difference => ({
  column: { key, title, digits: (value) => decimals(value, 4), show: (value) => decimals(value, 2) },
  of,
});

/** The numbers of a comparison in the order of their columns. */
export const differences: readonly Difference[] = [
  difference("cie76", "CIE76", ({ deltaE }) => deltaE.cie76),
  difference("cie94", "CIE94", ({ deltaE }) => deltaE.cie94),
  difference("cie94Textile", "CIE94 textile", ({ deltaE }) => deltaE.cie94Textile),
  difference("cmc11", "CMC(1:1)", ({ deltaE }) => deltaE.cmc11),
  difference("cmc21", "CMC(2:1)", ({ deltaE }) => deltaE.cmc21),
  difference("ciede2000", "CIEDE2000", ({ deltaE }) => deltaE.ciede2000),
  difference("deltaL", "ΔL", ({ deltaL }) => deltaL),
  difference("deltaC", "ΔC", ({ deltaC }) => deltaC),
  difference("deltaH", "ΔH", ({ deltaH }) => deltaH),
];

/** Whether a pair is within the tolerance. */
export const verdictColumn: Column = { key: "verdict", title: "verdict" };

/** Numbers that come last, so that every column before them keeps its place. */
export const furtherDifferences: readonly Difference[] = [
  difference("ciede2000Textile", "CIEDE2000 textile", ({ deltaE }) => deltaE.ciede2000Textile),
];

/** The columns that a file of pairs gets; the verdict only with a limit. */
export const addedColumns = (limit: Limit | undefined): readonly Column[] => [
  ...differences.map(({ column }) => column),
  ...(limit === undefined ? [] : [verdictColumn]),
  ...furtherDifferences.map(({ column }) => column),
];

/** Cells of those columns. */
export function addedCells(comparison: Comparison, limit: Limit | undefined): readonly Cell[] {
  const cells: Cell[] = [];
  for (const { of } of differences) cells.push(of(comparison));
  if (limit !== undefined) cells.push(verdictOf(comparison, limit));
  for (const { of } of furtherDifferences) cells.push(of(comparison));
  return cells;
}

/** Names that no column of a file of pairs may have. */
export const addedNames: readonly string[] = [
  ...[...differences, ...furtherDifferences].map(({ column }) => column.key),
  verdictColumn.key,
];
