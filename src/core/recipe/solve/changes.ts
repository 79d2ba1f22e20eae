import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { type Mixture, mixedLab } from "../mixture/mixture.js";

/** How far the colour moves when each dye by itself is stronger by a share of its strength [CIEDE2000]. */
export function changesBy(mixture: Mixture, strengths: readonly number[], share: number): readonly number[] {
  const lab = mixedLab(mixture, strengths);
  return strengths.map((strength, i) =>
    ciede2000(lab, mixedLab(mixture, strengths.with(i, strength * (1 + share)))),
  );
}

/**
 * Root of the sum of squares of a value and some changes.
 * @example
 * withChanges(0.3, [0.4, 1.2]) // => 1.3
 */
export const withChanges = (value: number, changes: readonly number[]): number =>
  Math.sqrt(changes.reduce((sum, change) => sum + change * change, value * value));
