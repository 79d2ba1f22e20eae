import { done, error, failed, type Outcome } from "../../fault.js";
import { convertDifference, ownUnit } from "../convert.js";
import { type KindName, kindOf } from "../kinds.js";
import type { Quantity } from "../quantity.js";
import { numberPattern, tidyNumber } from "./number-text.js";
import { type Measure, measureIn, parseMeasure } from "./parse-measure.js";
import { proposal } from "./proposal.js";

export interface ParseOptions {
  /** Unit of the result; default: the kind's own. */
  readonly unit?: string;
  /** Units that a message proposes; default: the kind's own. */
  readonly suggest?: readonly string[];
  /** Largest likely value, in the unit of the result: messages propose no larger one. */
  readonly most?: number;
  readonly path?: readonly (string | number)[];
}

const bareNumber = new RegExp(`^\\s*${numberPattern}\\s*$`);
const leadingNumber = new RegExp(`^\\s*${numberPattern}`);
const percentage = new RegExp(`^\\s*(${numberPattern})\\s*(?:%|percent|per\\s+cent|pct)\\s*$`);

/** Keeps US measures as written, for messages. */
const customary = (measure: Measure): Pick<Quantity, "customary"> =>
  measure.terms.some(({ unit }) => unit.symbol.includes("US "))
    ? { customary: measure.terms.map(({ number, unit }) => `${tidyNumber(number)} ${unit.symbol}`).join(" ") }
    : {};

/** Splits a text at its ±, written "±", "+-" or "+/-". */
export function splitPlusMinus(text: string): readonly [value: string, halfWidth: string | undefined] {
  const found = /±|\+\/?-/.exec(text);
  if (found === null) return [text, undefined];
  return [text.slice(0, found.index), text.slice(found.index + found[0].length)];
}

/**
 * Reads a quantity: a number and a unit in one text, with an optional half width of its 95 % interval, which is a share
 * of the value ("± 40 %") or a quantity of the same kind ("± 3 s"; for a share, percentage points). It never guesses a
 * unit: a missing one is a fault that says what to write.
 * @example
 * parseQuantity("volume", "6 L").value // => {"value": 6}
 * parseQuantity("time", "1 min 30 s").value // => {"value": 90}
 * parseQuantity("volumePerArea", "0.8 mL/dm2 ± 40 %").value.plusMinus // => 0.32
 * parseQuantity("temperature", "176 °F").value // => {"value": 80}
 * parseQuantity("volume", "6").faults[0].help // => "write 6 L or 6000 mL"
 */
export function parseQuantity(name: KindName, text: string, options: ParseOptions = {}): Outcome<Quantity> {
  const kind = kindOf(name);
  const path = options.path ?? [];
  const propose = (number: number): string =>
    proposal(kind, number, options.suggest ?? kind.suggest, options.most);
  const unit = ownUnit(kind, options.unit ?? kind.canonical);
  const [valueText, halfText] = splitPlusMinus(text);

  // "12 ± 3 s": both numbers share the unit.
  const shared =
    halfText !== undefined &&
    bareNumber.test(valueText) &&
    !percentage.test(halfText) &&
    !bareNumber.test(halfText)
      ? halfText.replace(leadingNumber, "")
      : "";
  const measure = parseMeasure(kind, `${valueText}${shared === "" ? "" : ` ${shared}`}`, path, propose);
  if (!measure.ok) return measure;
  const value = measureIn(measure.value, unit);
  const read = { value, ...customary(measure.value) };
  if (halfText === undefined) return done(read);

  const written = measure.value.terms.at(-1)!.unit.symbol;
  const share = percentage.exec(halfText);
  if (share !== null && name !== "percent") {
    if (name === "temperature")
      return failed(
        error(
          "half-width-form",
          path,
          "the half width of a temperature cannot be a share of it",
          `write it in degrees: ${valueText.trim()} ± 2 ${written}`,
        ),
      );
    return done({ ...read, plusMinus: (Math.abs(value) * Number(share[1])) / 100 });
  }
  if (bareNumber.test(halfText) && name !== "amount")
    return failed(
      error(
        "half-width-form",
        path,
        "the half width after ± needs a unit or a % sign",
        `write ${valueText.trim()} ± ${halfText.trim()} ${written}${name === "percent" ? "" : ` or ± ${halfText.trim()} %`}`,
      ),
    );
  const half = parseMeasure(kind, halfText, path, (number) => proposal(kind, number, [written]));
  if (!half.ok) return half;
  const plusMinus = half.value.terms.reduce((sum, t) => sum + convertDifference(t.number, t.unit, unit), 0);
  return done({ ...read, plusMinus: Math.abs(plusMinus) });
}

/** What to write in place of a number without a unit: "6 L or 6000 mL". */
const proposeUnit = (name: KindName, number: number, suggest?: readonly string[]): string =>
  proposal(kindOf(name), number, suggest ?? kindOf(name).suggest);

/** An example of a kind: "30 s or 0.5 min". */
export const exampleOf = (name: KindName, suggest?: readonly string[]): string =>
  proposeUnit(name, kindOf(name).example, suggest);
