/** Decimals too small to change a number of up to 1000: a double cannot hold them. */
const lost = "0{13}\\d*";

/**
 * Source of a regular expression for decimal numbers from 0 to a whole number, without sign. It
 * accepts all numbers with an exponent.
 * @example new RegExp(`^${numberUpTo(95)}$`).test("95.0") // => true
 * @example new RegExp(`^${numberUpTo(95)}$`).test("95.1") // => false
 */
export function numberUpTo(most: number): string {
  const digits = String(most);
  const below = [...digits].flatMap((digit, i) => {
    const least = i === 0 ? 1 : 0;
    const more = digits.length - 1 - i;
    return Number(digit) <= least
      ? []
      : [`${digits.slice(0, i)}[${least}-${Number(digit) - 1}]${more === 0 ? "" : `\\d{${more}}`}`];
  });
  const shorter = digits.length > 1 ? [`\\d{1,${digits.length - 1}}`] : ["0"];
  const whole = `0*(?:${[...shorter, ...below].join("|")})(?:\\.\\d*)?`;
  const exponent = "(?:\\d+(?:\\.\\d*)?|\\.\\d+)[eE][+-]?\\d+";
  return `(?:${whole}|0*${digits}(?:\\.(?:0*|${lost}))?|\\.\\d+|${exponent})(?![\\d.,eE])`;
}
