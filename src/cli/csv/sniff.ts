import type { DecimalMark } from "../../core/colour/csv/csv-number.js";

const candidates = [",", ";", "\t"] as const;
export type Delimiter = (typeof candidates)[number];

/**
 * What separates the columns of a file, by its header row: the sign that stands there most often outside quotes;
 * a comma where none does.
 */
export function sniffDelimiter(header: string): Delimiter {
  const bare = header.replace(/"(?:[^"]|"")*"/g, "");
  const count = (sign: string): number => bare.split(sign).length - 1;
  return candidates.reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}

/** The decimal sign that a cell shows; undefined where it is a whole number or none at all. */
export function decimalShown(cell: string | undefined): DecimalMark | undefined {
  const sign = /^\s*[+-]?\d*([.,])\d*(?:e[+-]?\d+)?\s*$/i.exec(cell ?? "")?.[1];
  if (sign === undefined) return undefined;
  return sign === "," ? "comma" : "point";
}
