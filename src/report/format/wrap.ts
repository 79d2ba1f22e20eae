import stringWidth from "fast-string-width";
import { wrapAnsi } from "fast-wrap-ansi";
import { largest } from "../../core/maths/extent.js";

const bound = "\u00a0";
const beforeUnit = /(\d) (?=(?:[kmµ]?[LgWJ]|mL|k?Wh|[cdm]?m[23]?|s|min|h|d|°C|%)(?![\w]))/g;

/** A text of letters and signs that take one column each, as most are: measured a fifth of the time of a short report. */
const plain = /^[\x20-\x7e\xa1-\xac\xae-\xff]*$/;

/** Columns that a text takes on a terminal. */
export const widthOf = (text: string): number => (plain.test(text) ? text.length : stringWidth(text));

/** Lines of at most `width` columns, broken between words and never between a number and its unit. */
export function wrap(text: string, width: number): string[] {
  if (text.length <= width && plain.test(text)) return [text.trim()];
  return wrapAnsi(text.replace(beforeUnit, `$1${bound}`), Math.max(1, width), { hard: true })
    .replaceAll(bound, " ")
    .split("\n")
    .map((line) => line.trimEnd());
}

/** The widest piece of a text that wrap does not break. */
export const widestWord = (text: string): number =>
  largest(text.replace(beforeUnit, `$1${bound}`).split(/\s+/).map(widthOf), 0);
