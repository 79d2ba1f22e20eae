import { done, error, failed, type Outcome } from "../fault.js";
import { convert, convertDifference, ownUnit } from "./convert.js";
import { findUnit, findUnitAnyCase, kindsOfUnit, tidyUnit } from "./find-unit.js";
import { type Kind, kindOf } from "./kinds.js";
import { numberFault, numberPattern, tidyNumber } from "./number-text.js";
import type { Unit } from "./units.js";

type Path = readonly (string | number)[];

/** A number and its unit as written; `terms` has more than one for "1 min 30 s". */
export interface Measure {
  readonly terms: readonly { readonly number: number; readonly unit: Unit }[];
}

const term = new RegExp(
  `^\\s*([+−-]?${numberPattern})(\\s*)((?:[^\\s\\d]\\S*(?:\\s+(?=[^\\s\\d+.−-])|$|(?=\\s)))*)`,
);
const signed = (text: string): number => Number(text.replace("−", "-"));

/** "6 L or 6000 mL": the number in the units that a message proposes, the first of which is taken as meant. */
export function proposal(kind: Kind, number: number, suggest: readonly string[]): string {
  const meant = ownUnit(kind, suggest[0]!);
  const written = (symbol: string): string => {
    const value = tidyNumber(convert(number, meant, ownUnit(kind, symbol)));
    return `${value} ${symbol}`.trim();
  };
  if (kind === kindOf("percent")) return `${tidyNumber(Math.abs(number) <= 1 ? number * 100 : number)} %`;
  return suggest.map(written).join(" or ");
}

const unitName = (text: string): string => tidyUnit(text);

/** Why a text names no unit of the kind, and what to write. */
function unitFault(kind: Kind, number: number, text: string, path: Path, suggest: readonly string[]) {
  const example = proposal(kind, number, suggest);
  const name = unitName(text);
  const isPrice = (what: string): boolean => what.startsWith("a price");
  const candidates = kindsOfUnit(text)
    .map(kindOf)
    .filter((other) => other !== kind);
  const other = candidates.find((o) => isPrice(o.what) === isPrice(kind.what)) ?? candidates[0];
  if (/^(?:uk|imp(?:erial)?)\.? ?/i.test(name))
    return error(
      "unit-unknown",
      path,
      `${name} is an imperial measure, which is not read`,
      "an imperial gallon is 4.54609 L, an imperial fluid ounce 28.413 mL: write litres",
    );
  if (/[€$£¥]|^[A-Z]{3}\b/.test(name) && (kind.what.startsWith("a price") || kind === kindOf("amount")))
    return error(
      "currency-in-price",
      path,
      "a currency stands in the price",
      `the currency is given once, under currency: write ${example}`,
    );
  if (other !== undefined)
    return error(
      "unit-wrong",
      path,
      `${tidyNumber(number)} ${name} is ${other.what}, where ${kind.what} is wanted`,
      name === "oz" && kind === kindOf("volume")
        ? `a fluid ounce is written fl oz: write ${tidyNumber(number)} fl oz`
        : `write ${kind.what} such as ${example}`,
    );
  const nearest = findUnitAnyCase(kind, text);
  return error(
    "unit-unknown",
    path,
    `${name} is not a known unit`,
    nearest === undefined
      ? `write ${kind.what} such as ${example}`
      : `capitals matter in units: write ${tidyNumber(number)} ${nearest}`,
  );
}

/** Reads "6 L", "1 min 30 s", "-4 °C": one or more numbers with units of one kind. */
export function parseMeasure(
  kind: Kind,
  text: string,
  path: Path,
  suggest: readonly string[],
): Outcome<Measure> {
  const form = numberFault(text, path);
  if (form !== undefined) return failed(form);
  const example = proposal(kind, kind.example, suggest);
  if (/^\s*\d+(:\d\d)+\s*$/.test(text) && kind === kindOf("time")) {
    const [first, second] = text.trim().split(":").map(Number);
    return failed(
      error(
        "quantity-form",
        path,
        `"${text.trim()}" can be read in two ways`,
        `write ${first} min ${second} s, or ${first} h ${second} min`,
      ),
    );
  }
  if (/[“”„‘’«»]/.test(text))
    return failed(
      error(
        "quantity-form",
        path,
        "curly quotes stand in the value",
        `use straight quotes or none: write ${text.replace(/[“”„‘’«»]/g, "").trim() || example}`,
      ),
    );
  const sign = new RegExp(`[€$£¥]\\s*(${numberPattern})`).exec(text);
  const terms: { number: number; unit: Unit }[] = [];
  let rest = text.replace(/(\d\s+)1\s*\//, "$1/");
  while (rest.trim() !== "" || terms.length === 0) {
    const found = term.exec(rest);
    if (found === null)
      return failed(
        sign !== null && (kind.what.startsWith("a price") || kind === kindOf("amount"))
          ? error(
              "currency-in-price",
              path,
              "a currency sign stands before the number",
              `the currency is given once, under currency: write ${proposal(kind, Number(sign[1]), suggest)}`,
            )
          : error(
              "quantity-form",
              path,
              text.trim() === ""
                ? `${kind.what} is wanted, nothing is given`
                : `"${text.trim()}" is no number with a unit`,
              `write ${kind.what} such as ${example}`,
            ),
      );
    const number = signed(found[1]!);
    const unitText = found[3]!.trim();
    if (!Number.isFinite(number))
      return failed(
        error("number-form", path, "the number is too large", `write ${kind.what} such as ${example}`),
      );
    const unit = findUnit(kind, unitText);
    if ((unitText === "" && unit === undefined) || (kind === kindOf("percent") && unitText === ""))
      return failed(
        error(
          "unit-missing",
          path,
          `${kind.what} needs ${kind === kindOf("percent") ? "a % sign" : "a unit"}`,
          `write ${proposal(kind, number, suggest)}`,
        ),
      );
    if (unit === undefined) return failed(unitFault(kind, number, unitText, path, suggest));
    if (number < 0 && kind.negative !== true)
      return failed(
        error("negative", path, `${kind.what} cannot be negative`, `write ${kind.what} such as ${example}`),
      );
    terms.push({ number, unit });
    rest = rest.slice(found[0].length);
  }
  const descending = terms.every(
    (t, i) =>
      i === 0 || t.unit.factor * terms[i - 1]!.unit.divisor < terms[i - 1]!.unit.factor * t.unit.divisor,
  );
  if (terms.length > 1 && (kind.sums !== true || !descending))
    return failed(
      error(
        "quantity-form",
        path,
        `"${text.trim()}" holds ${terms.length} numbers where ${kind.what} is wanted`,
        `write ${kind.what} such as ${example}`,
      ),
    );
  return done({ terms });
}

/** The measure in one unit. */
export const measureIn = (measure: Measure, unit: Unit): number =>
  measure.terms.length === 1
    ? convert(measure.terms[0]!.number, measure.terms[0]!.unit, unit)
    : measure.terms.reduce((sum, t) => sum + convertDifference(t.number, t.unit, unit), 0);
