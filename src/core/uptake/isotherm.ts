/**
 * Uptake at a bath strength relative to uptake from a fresh bath.
 *
 * a(s) = s, or with a saturation h [-] a(s) = s (1 + h)/(s + h); s strength [-], 1 in a fresh bath.
 * The smaller h is, the less a weak bath takes away; a(1) = 1 always. Valid for s >= 0 and h >= 0.
 * @source langmuir1918 form of the isotherm
 * @example
 * uptakeAtStrength(0.5) // => 0.5
 * uptakeAtStrength(0.5, 0.8) // => 0.692307692308
 */
export function uptakeAtStrength(strength: number, saturation?: number): number {
  if (saturation === undefined || strength === 0) return strength;
  return (strength * (1 + saturation)) / (strength + saturation);
}
