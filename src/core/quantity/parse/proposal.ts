import { convert, ownUnit } from "../convert.js";
import { type Kind, kindOf } from "../kinds.js";
import { shortNumber } from "../text/short-number.js";
import { tidyNumber } from "./number-text.js";

/** What a message proposes in place of a number without a unit. */
export type Propose = (number: number) => string;

/** Highest likely temperature by default: that of a bath of water [°C]. */
const hottestCelsius = 100;

/** The temperatures that a number without a unit may mean, none above `most` [°C]. */
function temperature(number: number, most: number): string | undefined {
  const [celsius, fahrenheit, kelvin] = ["°C", "°F", "K"].map((symbol) =>
    convert(number, ownUnit(kindOf("temperature"), symbol), ownUnit(kindOf("temperature"), "°C")),
  ) as [number, number, number];
  if (celsius > most && fahrenheit <= most) return `${tidyNumber(number)} °F`;
  if (celsius > most && kelvin <= most) return `${tidyNumber(number)} K`;
  if (celsius > most) return proposal(kindOf("temperature"), Math.min(most, 80), ["°C", "°F"]);
  return celsius > hottestCelsius ? `${tidyNumber(number)} °C or ${tidyNumber(number)} °F` : undefined;
}

/**
 * "6 L or 6000 mL": the number, taken in the first proposed unit, in all proposed units. A temperature above the highest
 * likely one (`most` [°C]) counts as °F.
 */
export function proposal(
  kind: Kind,
  number: number,
  suggest: readonly string[],
  most = hottestCelsius,
): string {
  const likely = kind === kindOf("temperature") ? temperature(number, most) : undefined;
  if (likely !== undefined) return likely;
  const meant = ownUnit(kind, suggest[0]!);
  const written = (symbol: string): string | [] => {
    const value = convert(number, meant, ownUnit(kind, symbol));
    // Proposes only values with few digits: 50 s is an awkward number of minutes.
    const exact = symbol === meant.symbol || Number(shortNumber(value)) === Number(tidyNumber(value));
    return exact ? `${tidyNumber(value)} ${symbol}`.trim() : [];
  };
  if (kind === kindOf("percent") && number === 1) return "1 % or 100 %";
  if (kind === kindOf("percent")) return `${tidyNumber(Math.abs(number) <= 1 ? number * 100 : number)} %`;
  return suggest.flatMap(written).join(" or ");
}
