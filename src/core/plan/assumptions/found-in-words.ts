import { mostAssumedShare } from "../../bath/evidence/most-assumed-share.js";
import type { Found } from "../../model/batch.js";

/** "estimated from evidence, 0.02 to 0.05 in 95 of 100 cases; partly assumed: ..." */
export function foundInWords({ assumedShare, interval95: [low, high] }: Found): string {
  const range = `${low.toPrecision(2)} to ${high.toPrecision(2)} in 95 of 100 cases`;
  const partly =
    assumedShare > mostAssumedShare
      ? `; partly assumed: the evidence leaves ${Math.round(100 * assumedShare)} % of the assumed figure's variance`
      : "";
  return `estimated from evidence, ${range}${partly}`;
}
