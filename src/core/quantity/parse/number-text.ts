import { error, type Fault } from "../../fault.js";
import { shortNumber } from "../text/short-number.js";

/** A decimal number without sign, as source of a regular expression. */
export const numberPattern = "(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?(?![\\d.,]|[eE][+-]?\\d)";

const rangePattern = new RegExp(
  `^\\s*(${numberPattern})\\s*(\\D*?)\\s*(?:-|–|to|\\.\\.)\\s*(${numberPattern})\\s*(.*)$`,
);

/** A number for a message, to 12 significant digits to hide rounding errors. */
export const tidyNumber = (value: number): string => shortNumber(value, 12);

/**
 * A number with separated thousands, without the separators; undefined for any other text.
 * @example
 * ungrouped("1,000") // => "1000"
 * ungrouped("12 500.5") // => "12500.5"
 * ungrouped("0,125") // => undefined
 */
export function ungrouped(text: string): string | undefined {
  const grouped = /^\s*([1-9]\d{0,2})([,'’_ \u00a0\u202f])(\d{3}(?:\2\d{3})*(?:\.\d+)?)\s*$/.exec(text);
  return grouped === null ? undefined : `${grouped[1]}${grouped[3]!.replace(/[^\d.]/g, "")}`;
}

/** The fault in how a text writes its numbers; undefined if it has none. */
export function numberFault(text: string, path: readonly (string | number)[]): Fault | undefined {
  const comma = /\d,\d/.exec(text);
  if (comma !== null) {
    const point = text.replace(/(\d),(?=\d)/g, "$1.");
    const joined = text.replace(/(\d),(?=\d)/g, "$1");
    const thousands = /(^|[^\d.,])[1-9]\d{0,2}(,\d{3})+(?![\d,])/.test(text);
    const plain = ungrouped(text);
    if (plain !== undefined)
      return error(
        "decimal-comma",
        path,
        "the number contains a comma",
        `do not separate thousands: write ${plain}`,
      );
    return error(
      "decimal-comma",
      path,
      "the number contains a comma",
      thousands
        ? `use a decimal point and do not separate thousands: write ${joined}${
            (point.match(/\./g) ?? []).length === 1 ? ` or ${point}` : ""
          }`
        : `use a decimal point: write ${point}`,
    );
  }
  const fraction = /^\s*(?:(\d+)\s+)?(\d+)\/(\d+)\s*(\D.*)?$/.exec(text);
  if (fraction !== null && Number(fraction[3]) !== 0) {
    const value = Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
    return error(
      "number-form",
      path,
      "this is a fraction, not a decimal number",
      `write ${`${tidyNumber(value)} ${fraction[4] ?? ""}`.trim()}`,
    );
  }
  const range = rangePattern.exec(text);
  if (range !== null) {
    const [low, high] = [Number(range[1]), Number(range[3])];
    const unit = range[4] ?? "";
    const half = `${tidyNumber((low + high) / 2)} ${unit} ± ${tidyNumber(Math.abs(high - low) / 2)} ${unit}`;
    return error(
      "number-form",
      path,
      "this is a range, not one number",
      `write one value, with its half width if that matters: ${half.replace(/\s+/g, " ").trim()}`,
    );
  }
  return undefined;
}
