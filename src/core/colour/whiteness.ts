import type { ObserverName, Reading, Xyz } from "../model/colour.js";
import { chromaticity } from "./chromaticity.js";

/** CIE whiteness and tint, and whether the colour is near enough to white for them to mean anything. */
export interface Whiteness {
  readonly whiteness: number;
  /** Positive: greenish, negative: reddish. */
  readonly tint: number;
  readonly valid: boolean;
}

/** Limits of tint within which the formula means anything; text before CIE 15:2004 says -3 to 3. */
export const tintLimits = { from: -4, to: 2 } as const;

const white: Readonly<Record<ObserverName, readonly [xn: number, yn: number]>> = {
  2: [0.3127, 0.329],
  10: [0.3138, 0.331],
};

/**
 * CIE whiteness W = Y + 800 (xn - x) + 1700 (yn - y) and tint T = k (xn - x) - 650 (yn - y), k = 1000 for the
 * 2° and 900 for the 10° observer; W = 100 and T = 0 for the perfect diffuser.
 *
 * X, Y, Z with Y = 100 for white, under D65; undefined under another illuminant and for black.
 * Valid for 40 < W < 5 Y - 280 and -4 ≤ T ≤ 2, among samples of one kind.
 * @source cie15 evaluation of whiteness
 * @source cie15ed3 the limits; older text has -3 < T < 3
 * @source isoJ02 the same for textiles
 * @example cieWhiteness([76.04, 80, 87.1], { illuminant: "D65", observer: 2 }).valid // => true
 */
export function cieWhiteness(xyz: Xyz, { illuminant, observer }: Reading): Whiteness | undefined {
  const point = illuminant === "D65" ? chromaticity(xyz) : undefined;
  if (point === undefined) return undefined;
  const [xn, yn] = white[observer];
  const [x, y] = point;
  const Y = xyz[1];
  const whiteness = Y + 800 * (xn - x) + 1700 * (yn - y);
  const tint = (observer === 2 ? 1000 : 900) * (xn - x) - 650 * (yn - y);
  const near = tint >= tintLimits.from && tint <= tintLimits.to;
  return { whiteness, tint, valid: whiteness > 40 && whiteness < 5 * Y - 280 && near };
}

const yellowing: Readonly<Record<ObserverName, readonly [cx: number, cz: number]>> = {
  2: [1.2985, 1.1335],
  10: [1.3013, 1.1498],
};

/**
 * Yellowness index YI = 100 (Cx X - Cz Z)/Y, Cx and Cz for D65 and the observer; 0 for the perfect diffuser
 * within the rounding of the constants.
 *
 * X, Y, Z with Y = 100 for white, under D65; undefined under another illuminant and for black.
 * Meant for near-white or slightly yellow samples. Constants from memory; each pair puts the published white at
 * 0 within 0.01, which checks it.
 * @source astmE313 yellowness index
 * @example yellowness([95.047, 100, 108.883], { illuminant: "D65", observer: 2 }) // => 0.0
 */
export function yellowness([X, Y, Z]: Xyz, { illuminant, observer }: Reading): number | undefined {
  if (illuminant !== "D65" || Y === 0) return undefined;
  const [cx, cz] = yellowing[observer];
  return (100 * (cx * X - cz * Z)) / Y;
}
