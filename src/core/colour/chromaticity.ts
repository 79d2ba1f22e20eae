import type { Xyz } from "../model/colour.js";

/** CIE chromaticity. */
export type Chromaticity = readonly [x: number, y: number];

/**
 * Chromaticity x = X/(X+Y+Z), y = Y/(X+Y+Z); black has none.
 *
 * X, Y, Z in one unit.
 * @source cie15 chromaticity coordinates
 * @example chromaticity([95.043, 100, 108.8801])[0] // => 0.3127
 */
export function chromaticity([X, Y, Z]: Xyz): Chromaticity | undefined {
  const sum = X + Y + Z;
  return sum === 0 ? undefined : [X / sum, Y / sum];
}

/**
 * Tristimulus values of a chromaticity and a luminance factor Y; the inverse of `chromaticity`.
 *
 * x, y [1], y above 0; Y and result in one unit.
 * @source cie15 chromaticity coordinates
 * @example chromaticityToXyz([0.3127, 0.329], 1)[0] // => 0.95046
 */
export function chromaticityToXyz([x, y]: Chromaticity, Y: number): Xyz {
  return [(x * Y) / y, Y, ((1 - x - y) * Y) / y];
}
