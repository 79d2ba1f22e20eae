/**
 * The logarithmic mean of two positive numbers: (a - b)/ln(a/b), and a where they are equal.
 * @source ang2005
 * @example
 * logMean(1, Math.E) // => 1.718281828
 * logMean(3, 3) // => 3
 */
export function logMean(a: number, b: number): number {
  const rise = (a - b) / b;
  const ratio = Math.abs(rise) < 0.5 ? Math.log1p(rise) : Math.log(a / b);
  return ratio === 0 ? a : (a - b) / ratio;
}

/**
 * Splits the change of a product over its factors: each gets logMean(after, before) × ln(its ratio), so the
 * parts add up to the whole change and no order of the factors is preferred.
 *
 * All factors positive; undefined where one is not.
 * @source ang2005
 * @example
 * productChange([2, 10], [2, 15]) // => [0, 10]
 * productChange([2, 0], [2, 15]) // => undefined
 */
export function productChange(before: readonly number[], now: readonly number[]): number[] | undefined {
  if (![...before, ...now].every((factor) => factor > 0)) return undefined;
  const product = (factors: readonly number[]): number => factors.reduce((all, factor) => all * factor, 1);
  const mean = logMean(product(now), product(before));
  return before.map((factor, i) => mean * Math.log(now[i]! / factor));
}
