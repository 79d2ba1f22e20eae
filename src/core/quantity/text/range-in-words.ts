import { shortNumber } from "./short-number.js";

const known: { readonly [factor: number]: string } = {
  2: "half to twice",
  3: "a third to three times",
  4: "a quarter to four times",
};

/**
 * The range of a figure that is known to a factor, in words.
 * @example
 * rangeInWords(2) // => "half to twice"
 * rangeInWords(4) // => "a quarter to four times"
 * rangeInWords(1.6) // => "0.63 to 1.6 times"
 */
export const rangeInWords = (factor: number): string =>
  known[factor] ?? `${shortNumber(1 / factor, 2)} to ${shortNumber(factor, 2)} times`;
