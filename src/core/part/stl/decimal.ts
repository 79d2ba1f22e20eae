const exactPowers = Float64Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));
const zero = 48;

/**
 * Reads a decimal number (`-1.25e+3`) from ASCII bytes, correctly rounded; NaN if the bytes are anything else
 * (an empty range, "inf", "0x1", a decimal comma). Up to 15 digits and a power of ten up to 22 are exact in
 * binary, so that one multiplication or division rounds correctly; the rest goes through Number().
 * @example
 * parseDecimal(new TextEncoder().encode("-1.25e2"), 0, 7) // => -125
 * Number.isNaN(parseDecimal(new TextEncoder().encode("1,5"), 0, 3)) // => true
 */
export function parseDecimal(bytes: Uint8Array, start: number, end: number): number {
  let at = start;
  const sign = bytes[at];
  if (sign === 45 || sign === 43) at++;
  let mantissa = 0;
  let digits = 0;
  let significant = 0;
  let point = -1;
  for (; at < end; at++) {
    const digit = bytes[at]! - zero;
    if (digit >= 0 && digit <= 9) {
      mantissa = mantissa * 10 + digit;
      digits++;
      if (significant > 0 || digit > 0) significant++;
    } else if (bytes[at] === 46 && point < 0) point = digits;
    else break;
  }
  if (digits === 0) return Number.NaN;
  let power = point < 0 ? 0 : point - digits;
  if (at < end) {
    if ((bytes[at]! | 32) !== 101) return Number.NaN;
    at++;
    const negative = bytes[at] === 45;
    if (negative || bytes[at] === 43) at++;
    if (at >= end) return Number.NaN;
    let exponent = 0;
    for (; at < end; at++) {
      const digit = bytes[at]! - zero;
      if (digit < 0 || digit > 9) return Number.NaN;
      exponent = Math.min(exponent * 10 + digit, 99_999);
    }
    power += negative ? -exponent : exponent;
  }
  if (significant > 15 || power > 22 || power < -22)
    return Number(String.fromCharCode(...bytes.subarray(start, Math.min(end, start + 4096))));
  const size = power < 0 ? mantissa / exactPowers[-power]! : mantissa * exactPowers[power]!;
  return sign === 45 ? -size : size;
}
