import type { Lab, Lch, Xyz } from "../model/colour.js";

/** Where the cube root gives way to a straight line: (6/29)³. */
export const epsilon = 216 / 24389;
/** Slope of the straight line in units of L*: (29/3)³. */
export const kappa = 24389 / 27;

const forward = (t: number): number => (t > epsilon ? Math.cbrt(t) : (kappa * t + 16) / 116);
const back = (f: number): number => (f > 6 / 29 ? f * f * f : (116 * f - 16) / kappa);

/**
 * CIELAB of tristimulus values: L* = 116 f(Y/Yn) - 16, a* = 500 (f(X/Xn) - f(Y/Yn)), b* = 200 (f(Y/Yn) - f(Z/Zn)).
 *
 * X, Y, Z and the white Xn, Yn, Zn in the same unit; the white must come from the same sum as the sample.
 * @source isoCie11664p4 definition of L*, a*, b*
 * @example xyzToLab([95.043, 100, 108.8801], [95.043, 100, 108.8801]) // => [100, 0, 0]
 * @example xyzToLab([20, 20, 20], [100, 100, 100])[0] // => 51.8372
 */
export function xyzToLab([X, Y, Z]: Xyz, [Xn, Yn, Zn]: Xyz): Lab {
  const fx = forward(X / Xn);
  const fy = forward(Y / Yn);
  const fz = forward(Z / Zn);
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/**
 * Tristimulus values of a CIELAB colour; the inverse of `xyzToLab`.
 *
 * L, a, b [CIELAB units]; white and result in the same unit.
 * @source isoCie11664p4 reverse transformation
 * @example labToXyz([50, 0, 0], [95.043, 100, 108.8801])[1] // => 18.4187
 */
export function labToXyz([L, a, b]: Lab, [Xn, Yn, Zn]: Xyz): Xyz {
  const fy = (L + 16) / 116;
  return [Xn * back(fy + a / 500), Yn * back(fy), Zn * back(fy - b / 200)];
}

/**
 * Lightness, chroma C*ab = √(a*² + b*²) and hue angle h_ab = atan2(b*, a*) [degrees, 0..360; 0 for a grey].
 *
 * @source isoCie11664p4 correlates of chroma and hue
 * @example labToLch([50, 3, -4]) // => [50, 5, 306.86989764584405]
 */
export function labToLch([L, a, b]: Lab): Lch {
  const degrees = (Math.atan2(b, a) * 180) / Math.PI;
  return [L, Math.sqrt(a * a + b * b), a === 0 && b === 0 ? 0 : degrees < 0 ? degrees + 360 : degrees];
}

/**
 * CIELAB of lightness, chroma and hue angle [degrees]; the inverse of `labToLch`.
 *
 * @source isoCie11664p4 correlates of chroma and hue
 * @example lchToLab([50, 5, 90])[2] // => 5
 */
export function lchToLab([L, C, h]: Lch): Lab {
  const radians = (h * Math.PI) / 180;
  return [L, C * Math.cos(radians), C * Math.sin(radians)];
}
