import { stringify } from "csv-stringify/sync";
import type { LogStyle } from "../read/log-style.js";
import type { LogValues } from "../row/log-values.js";

/**
 * A number as it was typed: quantities that were converted keep no more digits than any instrument has. Three decimals
 * are written as four: where the decimal mark is the other one, a spreadsheet takes 5.125 for 5125, and keeps 5.1250.
 */
function digits(value: number): string {
  const typed = String(Number(value.toFixed(4)));
  return /\.\d{3}$/.test(typed) ? `${typed}0` : typed;
}

/** The line with the names of the columns, without its end. */
export const headerText = ({ columns, delimiter }: LogStyle): string =>
  stringify([[...columns]], { delimiter, eof: false });

/**
 * One row of a log, without its end: a cell in each of its columns. Text that a spreadsheet would run as a formula
 * begins with an apostrophe.
 */
export function rowText(values: LogValues, { columns, delimiter, decimal }: LogStyle): string {
  const cells = columns.map((name) => {
    const value = values[name as keyof LogValues];
    if (value === undefined) return "";
    if (typeof value === "number")
      return { text: decimal === "comma" ? digits(value).replace(".", ",") : digits(value) };
    return typeof value === "string" ? value : value.text;
  });
  return stringify([cells], {
    delimiter,
    eof: false,
    escape_formulas: true,
    cast: { object: ({ text }) => ({ value: String(text), escape_formulas: false }) },
  });
}
