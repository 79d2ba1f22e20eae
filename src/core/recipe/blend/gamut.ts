import { ciede2000Terms } from "../../colour/difference/ciede2000.js";
import type { Lab } from "../../model/batch.js";

/**
 * In which way a colour misses a target: the largest of its differences in lightness, chroma and hue.
 * @example
 * missedBecause([50, 60, 20], [51, 40, 14]) // => "too dull"
 * missedBecause([30, 5, 5], [45, 5, 5]) // => "too light"
 * missedBecause([50, 30, 0], [50, 0, 30]) // => "of another hue"
 */
export function missedBecause(target: Lab, lab: Lab): string {
  const { deltaL, deltaC, deltaH } = ciede2000Terms(target, lab);
  const [l, c, h] = [Math.abs(deltaL), Math.abs(deltaC), Math.abs(deltaH)];
  if (h >= l && h >= c) return "of another hue";
  if (c >= l) return deltaC < 0 ? "too dull" : "too bright";
  return deltaL < 0 ? "too dark" : "too light";
}
