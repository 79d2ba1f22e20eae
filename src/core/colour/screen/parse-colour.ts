import { done, error, failed, type Outcome } from "../../fault.js";
import type { Colour, Lab } from "../../model/colour.js";
import { cssToHex } from "./css-colour.js";

const labPattern = /^[^,;#(]+[,;][^,;]+[,;][^,;]+$/;
const numberPattern = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/**
 * Faults of a CIELAB colour that no measurement gives: L* outside 0..100, a* or b* beyond 200.
 * @example labFault([50, 0, 0]) // => undefined
 * @example labFault([150, 0, 0]) // => "L must lie in 0 to 100, not 150"
 */
export function labFault([L, a, b]: Lab): string | undefined {
  if (!(L >= 0 && L <= 100)) return `L must lie in 0 to 100, not ${L}`;
  if (!(Math.abs(a) <= 200)) return `a must lie in -200 to 200, not ${a}`;
  if (!(Math.abs(b) <= 200)) return `b must lie in -200 to 200, not ${b}`;
  return undefined;
}

/**
 * A colour as written on the command line: `L,a,b`, or a screen colour (hex, CSS name, HSL).
 * @example parseColour("65.9, 44.6, 23").value // => ({ kind: "lab", lab: [65.9, 44.6, 23] })
 * @example parseColour("#d9603b").value // => ({ kind: "hex", hex: "#d9603b" })
 * @example parseColour("65.9, 44.6").ok // => false
 */
export function parseColour(text: string): Outcome<Colour> {
  if (!labPattern.test(text.trim())) {
    const hex = cssToHex(text);
    if (hex.ok) return done({ kind: "hex", hex: hex.value });
    return failed(
      ...hex.faults.map((fault) => ({
        ...fault,
        ...(fault.help === undefined ? {} : { help: `${fault.help} A CIELAB colour is "65.9,44.6,23.0".` }),
      })),
    );
  }
  const parts = text.split(/[,;]/).map((part) => part.trim());
  const wrong = parts.find((part) => !numberPattern.test(part));
  if (wrong !== undefined)
    return failed(
      error("colour-number", [], `"${wrong}" in "${text}" is not a number`, 'Write L,a,b: "65.9,44.6,23.0".'),
    );
  const lab = parts.map(Number) as unknown as Lab;
  const fault = labFault(lab);
  return fault === undefined ? done({ kind: "lab", lab }) : failed(error("colour-range", [], fault));
}
