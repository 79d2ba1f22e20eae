const point = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const comma = /^[+-]?(?:\d+,?\d*|,\d+)(?:e[+-]?\d+)?$/i;

/** How numbers are written in a file. */
export type DecimalMark = "point" | "comma";

/**
 * The number in a cell, or undefined where it holds none.
 * @example csvNumber(" -1.5e2 ", "point") // => -150
 * @example csvNumber("1,5", "comma") // => 1.5
 * @example csvNumber("1,5", "point") // => undefined
 */
export function csvNumber(cell: string, decimal: DecimalMark): number | undefined {
  const text = cell.trim();
  if (decimal === "point") return point.test(text) ? Number(text) : undefined;
  return comma.test(text) ? Number(text.replace(",", ".")) : undefined;
}
