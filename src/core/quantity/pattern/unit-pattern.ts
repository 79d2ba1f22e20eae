import type { Kind } from "../kinds.js";
import type { Unit } from "../units.js";

/** Pattern of a spelling: dm2, dm² or dm^2, with any white space for a space. */
const spelling = (text: string): string =>
  text
    .replace(/[.*+?^${}()|[\]\\]/g, "\\$&")
    .replace(/2/g, "(?:2|²|\\^2)")
    .replace(/3/g, "(?:3|³|\\^3)")
    .replace(/ /g, "\\s+");

const oneOf = (units: readonly Unit[]): string => {
  const names = units.flatMap(({ symbol, also }) => [symbol, ...also]).filter((name) => name !== "");
  return `(?:${names.map(spelling).join("|")})`;
};

/**
 * Source of a regular expression for the units of a kind; empty if the kind has no unit.
 * @example new RegExp(`^${unitPattern({ what: "", units: [{ symbol: "dm2", also: [], factor: 1, divisor: 1 }], canonical: "", suggest: [], example: 1 })}$`).test("dm²") // => true
 */
export function unitPattern(kind: Kind): string {
  const bare = kind.units.every(({ symbol }) => symbol === "");
  if (kind.per === undefined) return bare ? "" : oneOf(kind.units);
  const above = bare ? "(?:(?:1\\s*)?/\\s*|per\\s+)" : `${oneOf(kind.units)}(?:\\s*/\\s*|\\s+per\\s+)`;
  return `${above}${oneOf(kind.per)}`;
}
