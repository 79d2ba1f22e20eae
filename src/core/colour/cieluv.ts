import type { Xyz } from "../model/colour.js";
import { epsilon, kappa } from "./cielab.js";

const uPrime = ([X, Y, Z]: Xyz): number => (4 * X) / (X + 15 * Y + 3 * Z);
const vPrime = ([X, Y, Z]: Xyz): number => (9 * Y) / (X + 15 * Y + 3 * Z);

/** CIELUV: L* [0..100], u*, v*. */
export type Luv = readonly [L: number, u: number, v: number];

/**
 * CIELUV of tristimulus values: u* = 13 L* (u' - u'n), v* = 13 L* (v' - v'n), u' = 4X/(X+15Y+3Z), v' = 9Y/(X+15Y+3Z).
 *
 * X, Y, Z and the white in the same unit. Black is L* = u* = v* = 0.
 * @source isoCie11664p5 definition of L*, u*, v*
 * @example xyzToLuv([20, 20, 20], [100, 100, 100])[0] // => 51.8372
 */
export function xyzToLuv(xyz: Xyz, white: Xyz): Luv {
  const y = xyz[1] / white[1];
  const L = y > epsilon ? 116 * Math.cbrt(y) - 16 : kappa * y;
  if (L === 0) return [0, 0, 0];
  return [L, 13 * L * (uPrime(xyz) - uPrime(white)), 13 * L * (vPrime(xyz) - vPrime(white))];
}

/**
 * Tristimulus values of a CIELUV colour; the inverse of `xyzToLuv`.
 *
 * @source isoCie11664p5 reverse transformation
 * @example luvToXyz([100, 0, 0], [100, 100, 100])[0] // => 100
 */
export function luvToXyz([L, u, v]: Luv, white: Xyz): Xyz {
  if (L === 0) return [0, 0, 0];
  const up = u / (13 * L) + uPrime(white);
  const vp = v / (13 * L) + vPrime(white);
  const Y = white[1] * (L > 8 ? ((L + 16) / 116) ** 3 : L / kappa);
  return [(Y * 9 * up) / (4 * vp), Y, (Y * (12 - 3 * up - 20 * vp)) / (4 * vp)];
}
