/**
 * Kubelka-Munk function of an opaque layer: K/S = (1 - R)²/(2 R).
 *
 * R [0..1], above 0. Proportional to dye only while K/S stays below about 17 and R above about 5 %.
 * @source kubelkaMunk1931 reflectance of an infinitely thick layer
 * @example kOverS(0.2) // => 1.6
 */
export const kOverS = (reflectance: number): number => (1 - reflectance) ** 2 / (2 * reflectance);

/**
 * Reflectance of an opaque layer: R = 1 + K/S - √((K/S)² + 2 K/S), in a form that keeps its digits for large K/S.
 *
 * K/S [1], 0 or more; result [0..1].
 * @source kubelkaMunk1931 reflectance of an infinitely thick layer
 * @example reflectanceOf(9.025) // => 0.05
 * @example reflectanceOf(0) // => 1
 */
export const reflectanceOf = (ks: number): number => 1 / (1 + ks + Math.sqrt(ks * (ks + 2)));

/** Surface reflection: k1 from outside, k2 from inside, both 0..1. */
export interface Surface {
  readonly k1: number;
  readonly k2: number;
}

/**
 * Reflectance inside the material from the measured one: Ri = (Rm - k1)/(1 - k1 - k2 (1 - Rm)).
 *
 * Rm [0..1], from k1 up; k1 is 0.04 for a refractive index of 1.5 with the specular part included, k2 0.4 to 0.6.
 * @source saunderson1942 correction for reflection at the surface
 * @example withoutSurface(0.4, { k1: 0.04, k2: 0.6 }) // => 0.6
 */
export const withoutSurface = (measured: number, { k1, k2 }: Surface): number =>
  (measured - k1) / (1 - k1 - k2 * (1 - measured));

/**
 * Measured reflectance from that inside the material: Rm = k1 + (1 - k1) (1 - k2) Ri/(1 - k2 Ri).
 *
 * @source saunderson1942 correction for reflection at the surface
 * @example withSurface(0.6, { k1: 0.04, k2: 0.6 }) // => 0.4
 */
export const withSurface = (internal: number, { k1, k2 }: Surface): number =>
  k1 + ((1 - k1) * (1 - k2) * internal) / (1 - k2 * internal);

/**
 * Strength of a batch relative to a standard [%] from K/S at one wavelength: 100 (K/S)batch/(K/S)standard.
 *
 * @source kubelkaMunk1931 K/S proportional to the amount of dye
 * @example relativeStrength(11.85, 17.46) // => 147.342
 */
export const relativeStrength = (standardKs: number, batchKs: number): number => (100 * batchKs) / standardKs;

/** Relative strength of two curves: where the standard absorbs most, and over the sum of K/S. */
export interface CurveStrength {
  readonly atPeak: number;
  readonly apparent: number;
  /** Index of the sample where the standard absorbs most. */
  readonly peak: number;
}

/**
 * Strength of a batch relative to a standard [%] from two reflectance curves at the same wavelengths.
 *
 * reflectance [0..1], above 0.
 * @source kubelkaMunk1931 K/S proportional to the amount of dye
 * @example curveStrength([0.5, 0.2], [0.5, 0.1]).atPeak // => 253.125
 */
export function curveStrength(standard: ArrayLike<number>, batch: ArrayLike<number>): CurveStrength {
  let peak = 0;
  let standardSum = 0;
  let batchSum = 0;
  for (let i = 0; i < standard.length; i++) {
    if (standard[i]! < standard[peak]!) peak = i;
    standardSum += kOverS(standard[i]!);
    batchSum += kOverS(batch[i]!);
  }
  return {
    atPeak: relativeStrength(kOverS(standard[peak]!), kOverS(batch[peak]!)),
    apparent: relativeStrength(standardSum, batchSum),
    peak,
  };
}
