import { type Kind, type KindName, kindOf, kinds } from "../kinds.js";
import type { Unit } from "../units.js";

/** Writes spaces and exponents as the unit tables do: "cm²" and "cm^2" are "cm2", "mL / dm2" is "mL/dm2". */
export const tidyUnit = (text: string): string =>
  text
    .trim()
    .replace(/²|\^2/g, "2")
    .replace(/³|\^3/g, "3")
    .replace(/\s+/g, " ")
    .replace(/\s*\/\s*/g, "/")
    .replace(/^per (?!cent$)/, "/")
    .replace(/ per /, "/");

const among = (units: readonly Unit[], text: string): Unit | undefined =>
  units.find((unit) => unit.symbol === text || unit.also.includes(text));

/** The unit of a kind that a text names, composed if the kind is a quotient; undefined if none. */
export function findUnit(kind: Kind, text: string): Unit | undefined {
  const tidy = tidyUnit(text);
  if (kind.per === undefined) return among(kind.units, tidy);
  const stroke = tidy.indexOf("/");
  if (stroke < 0) return undefined;
  const above = among(kind.units, tidy.slice(0, stroke));
  const below = among(kind.per, tidy.slice(stroke + 1));
  if (above === undefined || below === undefined) return undefined;
  return {
    symbol: `${above.symbol}/${below.symbol}`,
    also: [],
    factor: above.factor * below.divisor,
    divisor: above.divisor * below.factor,
  };
}

/** The kinds in which a text names a unit, in the order of the table. */
export const kindsOfUnit = (text: string): KindName[] =>
  (Object.keys(kinds) as KindName[]).filter(
    (name) => tidyUnit(text) !== "" && findUnit(kindOf(name), text) !== undefined,
  );

/** The unit that a text names regardless of case; undefined if none or several. */
export function findUnitAnyCase(kind: Kind, text: string): string | undefined {
  const tidy = tidyUnit(text).toLowerCase();
  const matches = (units: readonly Unit[], wanted: string): Unit[] =>
    units.filter((unit) => [unit.symbol, ...unit.also].some((name) => name.toLowerCase() === wanted));
  if (kind.per === undefined) {
    const found = matches(kind.units, tidy);
    return found.length === 1 ? found[0]!.symbol : undefined;
  }
  const stroke = tidy.indexOf("/");
  const above = matches(kind.units, tidy.slice(0, Math.max(stroke, 0)));
  const below = matches(kind.per, tidy.slice(stroke + 1));
  return above.length === 1 && below.length === 1 ? `${above[0]!.symbol}/${below[0]!.symbol}` : undefined;
}
