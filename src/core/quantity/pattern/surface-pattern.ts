import { numberPattern } from "../parse/number-text.js";
import { anyCase } from "./any-case.js";
import { quantityPattern } from "./quantity-pattern.js";

/**
 * Source of a regular expression, without anchors, for the texts that `parseSurface` reads.
 * @example new RegExp(`^${surfacePattern()}$`).test("30 x 15 cm") // => true
 * @example new RegExp(`^${surfacePattern()}$`).test("30 cm") // => false
 */
export function surfacePattern(): string {
  const length = quantityPattern("length", { positive: true });
  const round = `(?:${anyCase("diameter")}|${anyCase("diam")}\\.?|${anyCase("dia")}\\.?|[øØ]|⌀)`;
  const forms = [
    quantityPattern("area", { positive: true }),
    `\\s*${round}${length}`,
    `${length}${round}\\s*`,
    `(?:${length}|\\s*${numberPattern}\\s*)[xX×*](?=\\s*[\\d.])${length}`,
  ];
  return `(?:${forms.join("|")})`;
}
