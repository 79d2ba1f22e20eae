import { shortNumber } from "../../quantity/text/short-number.js";

/**
 * What the bath log taught about a dye's times, in words.
 * @example
 * timeFactorText("coral", 1.08) // => "times of coral x 1.08, from the log"
 */
export const timeFactorText = (dye: string, factor: number): string =>
  `times of ${dye} x ${shortNumber(factor, 3)}, from the log`;
