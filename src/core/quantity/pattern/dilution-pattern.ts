import { numberPattern } from "../parse/number-text.js";
import { plusMinus, quantityPattern } from "./quantity-pattern.js";

/**
 * Source of a regular expression, without anchors, for the texts that `parseDilution` reads.
 * @example new RegExp(`^${dilutionPattern()}$`).test("1:9") // => true
 * @example new RegExp(`^${dilutionPattern()}$`).test("1/10") // => false
 */
export function dilutionPattern(): string {
  const ratio = `\\s*${numberPattern}\\s*:\\s*${numberPattern}\\s*(?:${plusMinus}${quantityPattern("percent")})?`;
  const positive = { positive: true };
  const forms = [
    ratio,
    quantityPattern("massPerVolume", positive),
    quantityPattern("volumePerVolume", positive),
    quantityPattern("percent", { most: 1, ...positive }),
  ];
  return `(?:${forms.join("|")})`;
}
