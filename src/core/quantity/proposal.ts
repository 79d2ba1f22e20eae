import { convert, ownUnit } from "./convert.js";
import { type Kind, kindOf } from "./kinds.js";
import { tidyNumber } from "./number-text.js";

/** "6 L or 6000 mL": the number in the units that a message proposes, the first of which is taken as meant. */
export function proposal(kind: Kind, number: number, suggest: readonly string[]): string {
  const meant = ownUnit(kind, suggest[0]!);
  const written = (symbol: string): string => {
    const value = tidyNumber(convert(number, meant, ownUnit(kind, symbol)));
    return `${value} ${symbol}`.trim();
  };
  if (kind === kindOf("percent") && number === 1) return "1 % or 100 %";
  if (kind === kindOf("percent")) return `${tidyNumber(Math.abs(number) <= 1 ? number * 100 : number)} %`;
  return suggest.map(written).join(" or ");
}
