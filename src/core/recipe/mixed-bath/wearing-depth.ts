/**
 * Depth that a dye takes in a dip that weakens the bath: D = q a(s (1 - c D)), the strength taken as the mean of before
 * and after.
 *
 * q depth that strength 1 gives in that time [-], s strength before the dip [-], c half the share of the dye in the bath
 * that depth 1 takes up [-], a(s) the isotherm with saturation h. Valid for q, s, c >= 0.
 * @example
 * wearingDepth(0.8, 0.5, 0) // => 0.4
 * wearingDepth(0.8, 0.5, 0.1) // => 0.3846153846
 * wearingDepth(0.8, 0.5, 0.1, 0.8) // => 0.5352208968
 */
export function wearingDepth(
  depthAtOne: number,
  strength: number,
  halfSpent: number,
  saturation?: number,
): number {
  if (strength === 0 || depthAtOne === 0) return 0;
  const taken = strength * halfSpent;
  if (saturation === undefined) return (depthAtOne * strength) / (1 + depthAtOne * taken);
  const top = depthAtOne * (1 + saturation);
  const middle = strength + saturation + top * taken;
  // The smaller root, in the form that keeps its digits where the bath hardly wears.
  return (2 * top * strength) / (middle + Math.sqrt(middle * middle - 4 * taken * top * strength));
}
