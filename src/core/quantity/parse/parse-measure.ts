import { done, error, failed, type Outcome } from "../../fault.js";
import { convert, convertDifference } from "../convert.js";
import { type Kind, kindOf } from "../kinds.js";
import { magnitudeFault } from "../magnitude.js";
import type { Unit } from "../units.js";
import { findUnit } from "./find-unit.js";
import { numberPattern } from "./number-text.js";
import type { Propose } from "./proposal.js";
import { textFault } from "./text-fault.js";
import { unitFault } from "./unit-fault.js";

type Path = readonly (string | number)[];

/** A number and its unit as written; `terms` has more than one for "1 min 30 s". */
export interface Measure {
  readonly terms: readonly { readonly number: number; readonly unit: Unit }[];
}

const term = new RegExp(
  `^\\s*([+−-]?${numberPattern})(\\s*)((?:[^\\s\\d]\\S*(?:\\s+(?=[^\\s\\d+.−-])|$|(?=\\s)))*)`,
);
const signed = (text: string): number => Number(text.replace("−", "-"));

/** Reads "6 L", "1 min 30 s", "-4 °C": one or more numbers with units of one kind. */
export function parseMeasure(kind: Kind, text: string, path: Path, propose: Propose): Outcome<Measure> {
  const fault = textFault(kind, text, path, propose);
  if (fault !== undefined) return failed(fault);
  const example = propose(kind.example);
  const terms: { number: number; unit: Unit }[] = [];
  let rest = text.replace(/(\d\s+)1\s*\//, "$1/");
  while (rest.trim() !== "" || terms.length === 0) {
    const found = term.exec(rest);
    if (found === null)
      return failed(
        error(
          "quantity-form",
          path,
          text.trim() === "" ? `${kind.what} is missing` : `"${text.trim()}" is not a number with a unit`,
          `write ${kind.what} such as ${example}`,
        ),
      );
    const number = signed(found[1]!);
    const unitText = found[3]!.trim();
    if (!Number.isFinite(number))
      return failed(
        error("number-form", path, "the number is too large", `write ${kind.what} such as ${example}`),
      );
    const size = magnitudeFault(number, path, `write ${kind.what} such as ${example}`);
    if (size !== undefined) return failed(size);
    const unit = findUnit(kind, unitText);
    if ((unitText === "" && unit === undefined) || (kind === kindOf("percent") && unitText === ""))
      return failed(
        error(
          "unit-missing",
          path,
          `${kind.what} needs ${kind === kindOf("percent") ? "a % sign" : "a unit"}`,
          `write ${propose(number)}`,
        ),
      );
    if (unit === undefined) return failed(unitFault(kind, number, unitText, path, propose));
    if ((number < 0 || Object.is(number, -0)) && kind.negative !== true)
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
        `"${text.trim()}" is not ${kind.what}: it contains ${terms.length} numbers`,
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
