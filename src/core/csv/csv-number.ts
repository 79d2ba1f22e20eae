const point = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const comma = /^[+-]?(?:\d+,?\d*|,\d+)(?:e[+-]?\d+)?$/i;

export type DecimalMark = "point" | "comma";

/**
 * The decimal mark that a cell shows; undefined where it is a whole number or not a number.
 * @example ["1,5", "1.5", "15"].map(decimalShown) // => ["comma", "point", undefined]
 */
export function decimalShown(cell: string): DecimalMark | undefined {
  const mark = /^\s*[+-]?\d*([.,])\d*(?:e[+-]?\d+)?\s*$/i.exec(cell)?.[1];
  if (mark === undefined) return undefined;
  return mark === "," ? "comma" : "point";
}

/** The number in a cell; undefined where it is not a number in the way of its file. */
export type ReadNumber = (cell: string) => number | undefined;

/**
 * Starts reading the numbers of one file. The first cell that shows a decimal mark decides for all that follow; the
 * whole numbers before it read alike either way.
 * @example [" 15", "-1,5e2", "1.5"].map(csvNumbers()) // => [15, -150, undefined]
 * @example ["1.5", "1,5", "", "x"].map(csvNumbers()) // => [1.5, undefined, undefined, undefined]
 */
export function csvNumbers(): ReadNumber {
  let decimal: DecimalMark | undefined;
  return (cell) => {
    decimal ??= decimalShown(cell);
    const text = cell.trim();
    if (decimal === "comma") return comma.test(text) ? Number(text.replace(",", ".")) : undefined;
    return point.test(text) ? Number(text) : undefined;
  };
}
