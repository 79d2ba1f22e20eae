import type { LabPair } from "../../core/colour/csv/pairs-csv.js";
import type { Comparison, FormulaName } from "../../core/colour/difference/compare-colours.js";

/** A row of a file of pairs with the differences between its colours. */
export interface PairRow extends LabPair, Comparison {
  readonly row: number;
  /** Every cell as it was read, one a column of the header. */
  readonly cells: readonly string[];
}

/** The columns of a file of pairs. */
export interface PairHeader {
  readonly names: readonly string[];
  /** Places of L1, a1, b1, L2, a2, b2. */
  readonly columns: readonly number[];
}

/** The largest difference that passes, and by which formula. */
export interface Limit {
  readonly formula: FormulaName;
  readonly tolerance: number;
}

/** Pass or fail in a word. */
export const verdictOf = ({ deltaE }: Comparison, { formula, tolerance }: Limit): "pass" | "fail" =>
  deltaE[formula] <= tolerance ? "pass" : "fail";

/** How a file of pairs came out. */
export interface PairsSummary {
  /** Rows compared. */
  readonly pairs: number;
  /** Rows that could not be read. */
  readonly unread: number;
  /** Of those compared; absent without a tolerance. */
  readonly passed?: number;
}
