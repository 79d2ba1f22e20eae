import { counted } from "../../core/quantity/text/counted.js";
import { formulaTitles } from "./formula-names.js";
import type { Limit, PairsSummary } from "./pair.js";

/** How a file of pairs came out, in sentences. */
export function pairsSaid({ pairs, unread, passed }: PairsSummary, limit: Limit | undefined): string {
  const verdict =
    limit === undefined || passed === undefined
      ? `${counted(pairs, "pair")} compared.`
      : `${passed} of ${counted(pairs, "pair")} within ${limit.tolerance} by ${formulaTitles[limit.formula]}${passed < pairs ? `: ${pairs - passed} not` : ""}.`;
  return unread === 0 ? verdict : `${verdict} ${counted(unread, "row")} could not be read.`;
}
