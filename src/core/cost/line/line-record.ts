import type { Batch } from "../../model/batch.js";
import type { LineCause, LineChange } from "./change.js";

/**
 * What the figure of a cause counts, which decides how it is printed: money, a share of 1, a bare number, a count of
 * parts, a time, an amount in the unit that its name gives, or in a thousandth of that.
 */
export type CauseFigure =
  | "money"
  | "share"
  | "number"
  | "parts"
  | "seconds"
  | "minutes"
  | "amount"
  | "thousandths";

/** A cause in words: what it is called, and what its figure counts. */
export interface CauseWords {
  readonly name: string;
  readonly figure: CauseFigure;
}

/** All that is special to one line of a cost sheet. */
export interface LineRecord<Code extends string = string> {
  /** In reports; a column of CSV is called so too, with underscores for spaces. */
  readonly title: string;
  /** Whether the batch gives money for it, used or not: a batch without any such line has no costs. */
  readonly isGiven: (batch: Batch) => boolean;
  /** What its price depends on and the batch does not give, in words: it counts as nothing. */
  readonly missing: (batch: Batch) => readonly string[];
  /** What moved the line between two reports. The changes add up to that of the line, per good part. */
  readonly causes: (line: LineChange) => readonly LineCause<NoInfer<Code>>[];
  /** Every cause that `causes` can name. */
  readonly words: Readonly<Record<Code, CauseWords>>;
}
