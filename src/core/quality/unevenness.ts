import { ciede2000 } from "../colour/difference/ciede2000.js";
import type { Lab } from "../model/colour.js";

/** Several readings of one part, taken in different places. */
export interface Unevenness {
  readonly readings: number;
  /** Their mean colour, which stands for the part. */
  readonly lab: Lab;
  /** Mean difference of a reading from that [CIEDE2000]. */
  readonly meanDeltaE00: number;
  /** Between the two that are farthest apart [CIEDE2000]. */
  readonly largestDeltaE00: number;
}

/**
 * Mean colour of several readings of one part, how far they lie from it in the mean, and how far the two that differ
 * most lie apart. At least one reading.
 * @param labs CIELAB, all under one illuminant and observer
 * @source berns2000 mean colour difference from the mean
 * @example unevenness([[50, 0, 0], [52, 0, 0]]).lab // => [51, 0, 0]
 * @example unevenness([[50, 0, 0]]).largestDeltaE00 // => 0
 */
export function unevenness(labs: readonly Lab[]): Unevenness {
  const mean = [0, 1, 2].map((axis) => labs.reduce((sum, lab) => sum + lab[axis]!, 0) / labs.length);
  const lab = mean as unknown as Lab;
  let largestDeltaE00 = 0;
  for (const [i, one] of labs.entries())
    for (const other of labs.slice(i + 1)) largestDeltaE00 = Math.max(largestDeltaE00, ciede2000(one, other));
  const sum = labs.reduce((total, one) => total + ciede2000(lab, one), 0);
  return { readings: labs.length, lab, meanDeltaE00: sum / labs.length, largestDeltaE00 };
}
