/**
 * Strength at which the isotherm gives an uptake relative to a fresh bath: s = a, or s = a h/(1 + h - a).
 *
 * a and saturation h as in `uptakeAtStrength`. Infinite or negative where no strength gives so much, a ≥ 1 + h.
 * @source langmuir1918 form of the isotherm
 * @example
 * strengthOfUptake(0.692307692308, 0.8) // => 0.500000000
 */
export const strengthOfUptake = (uptake: number, saturation?: number): number =>
  saturation === undefined ? uptake : (uptake * saturation) / (1 + saturation - uptake);
