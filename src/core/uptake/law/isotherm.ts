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

/**
 * The strength that gives an uptake relative to a fresh bath: `uptakeAtStrength` solved for the strength,
 * s = a h/(1 + h - a). Undefined where the fibre takes up no such amount at any strength.
 * @example
 * strengthForUptake(0.5) // => 0.5
 * strengthForUptake(0.9, 0.8) // => 0.8
 * strengthForUptake(1.9, 0.8) // => undefined
 */
export function strengthForUptake(uptake: number, saturation?: number): number | undefined {
  if (saturation === undefined) return uptake;
  return uptake < 1 + saturation ? (uptake * saturation) / (1 + saturation - uptake) : undefined;
}
