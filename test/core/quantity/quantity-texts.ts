import fc from "fast-check";
import { type KindName, kindOf } from "../../../src/core/quantity/kinds.js";
import type { Unit } from "../../../src/core/quantity/units.js";

export const spaces = fc.constantFrom("", " ", "  ");
/** A number without sign. */
export const number = fc.oneof(
  fc.constantFrom(
    "0",
    "0.0",
    "1",
    "100",
    "6.5",
    ".5",
    "7.",
    "1e3",
    "2.5E-1",
    "1e+2",
    "007",
    "99.999",
    "100.1",
  ),
  fc.double({ min: 0, max: 1e6, noNaN: true }).map(String),
  fc.integer({ min: 0, max: 2000 }).map(String),
);
const signed = fc
  .tuple(fc.constantFrom("", "", "", "", "", "+", "-", "−"), number)
  .map((parts) => parts.join(""));

/** A spelling of a unit, its exponents and spaces written in one of the ways that are read. */
const spelt = (units: readonly Unit[]): fc.Arbitrary<string> =>
  fc
    .tuple(
      fc.constantFrom(...units.flatMap(({ symbol, also }) => [symbol, ...also])),
      fc.constantFrom("2", "²", "^2"),
      fc.constantFrom("3", "³", "^3"),
      fc.constantFrom(" ", "  "),
    )
    .map(([text, two, three, space]) => text.replace("2", two).replace("3", three).replace(/ /g, space));
/** A unit of a kind. */
export const unitOf = (name: KindName): fc.Arbitrary<string> => {
  const { units, per } = kindOf(name);
  return per === undefined
    ? spelt(units)
    : fc
        .tuple(spelt(units), fc.constantFrom("/", " / ", " per "), spelt(per))
        .map(([above, stroke, below]) => `${above}${stroke}${below}`);
};
/** Texts that look like a quantity of a kind; most of them are read as one. */
export const quantityText = (name: KindName): fc.Arbitrary<string> => {
  const term = fc.tuple(signed, spaces, unitOf(name)).map((parts) => parts.join(""));
  const sum = fc.array(term, { minLength: 1, maxLength: 3 }).map((terms) => terms.join(" "));
  const half = fc.oneof(
    sum,
    fc
      .tuple(number, spaces, fc.constantFrom("%", "percent", "per cent", "pct"))
      .map((parts) => parts.join("")),
    number,
  );
  return fc
    .tuple(
      spaces,
      fc.oneof(term, sum, signed),
      fc.option(fc.tuple(spaces, fc.constantFrom("±", "+-", "+/-"), spaces, half)),
      spaces,
    )
    .map(
      ([before, value, range, after]) => `${before}${value}${range === null ? "" : range.join("")}${after}`,
    );
};
