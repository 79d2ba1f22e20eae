import { waterDensityKgM3 } from "../bath/water.js";

/**
 * Whether a part floats until it is wetted through: its density [g/cm3] is below that of water at the bath's
 * temperature [°C]. The part's density is its mass over the volume that its outer skin encloses.
 * @example
 * floats(0.93, 80) // => true
 * floats(0.98, 80) // => false
 * floats(0.98, 20) // => true
 */
export const floats = (partGPerCm3: number, bathCelsius: number): boolean =>
  partGPerCm3 < waterDensityKgM3(bathCelsius) / 1000;

/** What to do with a part that floats, or nothing. */
export const floatAdvice = (partGPerCm3: number, bathCelsius: number): string | undefined =>
  floats(partGPerCm3, bathCelsius) ? "floats until wetted: use a basket or weight" : undefined;
