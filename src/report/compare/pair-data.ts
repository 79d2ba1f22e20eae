import { type Limit, type PairHeader, type PairRow, verdictOf } from "./pair.js";

/** A compared row for JSON and NDJSON; `others` holds the columns beside the colours. */
export function pairData(
  { names, columns }: PairHeader,
  { row, cells, standard, sample, deltaE, deltaL, deltaC, deltaH }: PairRow,
  limit: Limit | undefined,
): Readonly<Record<string, unknown>> {
  const others = names.flatMap((name, i) => (columns.includes(i) ? [] : [[name, cells[i]] as const]));
  return {
    row,
    ...(others.length === 0 ? {} : { others: Object.fromEntries(others) }),
    standard,
    sample,
    deltaE,
    deltaL,
    deltaC,
    deltaH,
    ...(limit === undefined ? {} : { pass: verdictOf({ deltaE, deltaL, deltaC, deltaH }, limit) === "pass" }),
  };
}
