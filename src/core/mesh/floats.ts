/**
 * Whether a part floats until it is wetted through: its density [g/cm3] is below that of the bath's water at
 * bath temperature [g/cm3]. The part's density is its mass over the volume that its outer skin encloses.
 * @example
 * floats(0.93, 0.9718) // => true
 * floats(1.01, 0.9718) // => false
 */
export const floats = (partGPerCm3: number, waterGPerCm3: number): boolean => partGPerCm3 < waterGPerCm3;

/** What to do with a part that floats, or nothing. */
export const floatAdvice = (partGPerCm3: number, waterGPerCm3: number): string | undefined =>
  floats(partGPerCm3, waterGPerCm3) ? "floats until wetted: use a basket or weight" : undefined;
