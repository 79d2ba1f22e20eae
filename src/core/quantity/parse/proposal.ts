import { convert, ownUnit } from "../convert.js";
import { type Kind, kindOf } from "../kinds.js";
import { shortNumber } from "../text/short-number.js";
import { tidyNumber } from "./number-text.js";

/** What a message proposes to write in place of a number that stands alone. */
export type Propose = (number: number) => string;

/** Highest temperature that is likely where nothing else is said: that of a bath of water [°C]. */
const hottestCelsius = 100;

/** The temperatures that a number alone may stand for, none of them above the highest [°C]. */
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
 * "6 L or 6000 mL": the number in the units that a message proposes, the first of which is taken as meant. A
 * temperature above the highest that is likely (`most` [°C]) is taken for one in °F.
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
    // The same quantity in few digits, or not at all: 50 s are no number of minutes to propose.
    const exact = symbol === meant.symbol || Number(shortNumber(value)) === Number(tidyNumber(value));
    return exact ? `${tidyNumber(value)} ${symbol}`.trim() : [];
  };
  if (kind === kindOf("percent") && number === 1) return "1 % or 100 %";
  if (kind === kindOf("percent")) return `${tidyNumber(Math.abs(number) <= 1 ? number * 100 : number)} %`;
  return suggest.flatMap(written).join(" or ");
}
