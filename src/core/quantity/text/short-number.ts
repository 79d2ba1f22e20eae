/**
 * A number for a message: at most `digits` significant digits, no exponent, no zeros at the end.
 * @example
 * shortNumber(82.22222222222223) // => "82.22"
 * shortNumber(219.4, 2) // => "220"
 * shortNumber(0.004567) // => "0.004567"
 */
export function shortNumber(value: number, digits = 4): string {
  const short = Number(value.toPrecision(digits));
  return Math.abs(short) < 1e21 && (short === 0 || Math.abs(short) >= 1e-6)
    ? short.toString()
    : value.toPrecision(digits);
}
