/** Product of two chromas up to which one colour counts as grey: squares of smaller numbers come to 0. */
export const leastProduct = 1e-100;

/**
 * Signed hue difference ΔH = 2 √(C1 C2) sin((h2 - h1)/2) of two points of a chroma plane, without any angle:
 * with p = C1 C2, d = the dot and c = the cross product it is c √(2/(p + d)), and sign(c) √(2 (p - d)) where d < 0.
 *
 * a, b [CIELAB units]; product = C1 C2. Positive where the hue angle grows by less than
 * 180°; for hues exactly 180° apart the sign is that of h2 - h1 with both within 0..360°.
 * @source sharma2005 eqs. 10 and 11
 * @example signedHueDifference(3, 0, 0, 3, 9) // => 4.2426
 * @example signedHueDifference(0, -3, 0, 3, 9) // => -6
 */
export function signedHueDifference(a1: number, b1: number, a2: number, b2: number, product: number): number {
  if (product <= leastProduct) return 0;
  const dot = a1 * a2 + b1 * b2;
  const cross = a1 * b2 - a2 * b1;
  if (dot >= 0) return cross * Math.sqrt(2 / (product + dot));
  const size = Math.sqrt(2 * (product - dot));
  const grows = cross === 0 ? b1 > 0 || (b1 === 0 && a1 > 0) : cross > 0;
  return grows ? size : -size;
}
