import { exactSumOf } from "../../maths/exact-sum.js";
import type { LineCause, LineOfOrder } from "../line/change.js";
import { type CauseCode, type CostLine, costLines, lineRecords } from "../line/cost-lines.js";
import type { OrderCost } from "./snapshot.js";

/** A cause on one line of the cost sheet. */
export interface CostCause extends LineCause<CauseCode> {
  readonly line: CostLine;
}

const lineOf = ({ lines, quantity, started, drivers }: OrderCost, line: CostLine): LineOfOrder => ({
  amount: lines?.[line] ?? 0,
  quantity,
  started,
  drivers,
});

/** Causes of one code and line as one; those that moved nothing left out; the largest first. */
function merged(causes: readonly CostCause[]): CostCause[] {
  const kept = new Map<string, CostCause[]>();
  for (const cause of causes) {
    const key = `${cause.line} ${cause.code}`;
    kept.set(key, [...(kept.get(key) ?? []), cause]);
  }
  return [...kept.values()]
    .map((same) => ({ ...same[0]!, change: exactSumOf(same, ({ change }) => change) }))
    .filter(({ change }) => Math.abs(change) > 1e-9)
    .sort(
      (a, b) =>
        Math.abs(b.change) - Math.abs(a.change) || costLines.indexOf(a.line) - costLines.indexOf(b.line),
    );
}

/**
 * What moved the cost of a good part of an order between two reports. The changes add up to the change of the
 * cost; where prices and amounts changed together, each gets its part by the logarithmic mean.
 * @source ang2005
 */
export const causesOf = (before: OrderCost, now: OrderCost): CostCause[] =>
  merged(
    costLines.flatMap((line) =>
      lineRecords[line]
        .causes([lineOf(before, line), lineOf(now, line)])
        .map(({ code, ...figures }) => ({ code, line, ...figures })),
    ),
  );
