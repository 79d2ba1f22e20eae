import {
  type LineCause,
  type LineChange,
  type LineOfOrder,
  perGood,
  splitChange,
  yieldFactor,
} from "./change.js";

/** What moves the undyed parts of an order: what one costs, and how many are started for each good one. */
export function blankCauses(line: LineChange): LineCause<"yield" | "blank-price">[] {
  const [before, now] = line;
  const each = ({ amount, started }: LineOfOrder): number => amount / started;
  return splitChange<"yield" | "blank-price">(perGood(now) - perGood(before), [
    yieldFactor(line),
    { code: "blank-price", before: each(before), now: each(now) },
  ]);
}
