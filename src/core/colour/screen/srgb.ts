import type { Lab, Reading, Xyz } from "../../model/colour.js";
import { chromaticityToXyz } from "../chromaticity.js";
import { labToXyz, xyzToLab } from "../cielab.js";

/** Red, green, blue of sRGB, 0..1 within the gamut; beyond it they are kept, so that nothing is clipped unseen. */
export type Srgb = readonly [red: number, green: number, blue: number];

/** What sRGB values mean: D65 and the 2° observer. */
export const srgbReading: Reading = { illuminant: "D65", observer: 2 };

/**
 * The white of sRGB, x = 0.3127, y = 0.3290, with Y = 100. A hex colour is measured against this white and not
 * against the 5 nm sum of D65, so that #ffffff is L* = 100, a* = b* = 0.
 *
 * @source iecSrgb reference white
 * @example srgbWhite[0] // => 95.046
 */
export const srgbWhite: Xyz = chromaticityToXyz([0.3127, 0.329], 100);

type Matrix = readonly [Xyz, Xyz, Xyz];
const cross = ([a, b, c]: Xyz, [d, e, f]: Xyz): Xyz => [b * f - c * e, c * d - a * f, a * e - b * d];
const dot = ([a, b, c]: Xyz, [d, e, f]: Xyz): number => a * d + b * e + c * f;
const scaled = ([a, b, c]: Xyz, k: number): Xyz => [a * k, b * k, c * k];
/** Rows of the inverse of the matrix that has these columns. */
function inverseOf([p, q, r]: Matrix): Matrix {
  const k = 1 / dot(p, cross(q, r));
  return [scaled(cross(q, r), k), scaled(cross(r, p), k), scaled(cross(p, q), k)];
}

const unscaled: Matrix = [
  chromaticityToXyz([0.64, 0.33], 1),
  chromaticityToXyz([0.3, 0.6], 1),
  chromaticityToXyz([0.15, 0.06], 1),
];
/** X, Y, Z of full red, green and blue: the primaries in the amounts that make the white. */
const primaries = unscaled.map((column, i) =>
  scaled(column, dot(inverseOf(unscaled)[i]!, srgbWhite)),
) as unknown as Matrix;
const inverse = inverseOf(primaries);

/**
 * sRGB value of a linear one: 12.92 C up to 0.0031308, else 1.055 C^(1/2.4) - 0.055; odd for negative values.
 *
 * @source iecSrgb encoding
 * @example encodeSrgb(0.5) // => 0.735357
 */
export function encodeSrgb(linear: number): number {
  const size = Math.abs(linear);
  return Math.sign(linear) * (size <= 0.0031308 ? 12.92 * size : 1.055 * size ** (1 / 2.4) - 0.055);
}

/**
 * Linear value of an sRGB one; the inverse of `encodeSrgb`.
 *
 * @source iecSrgb decoding
 * @example decodeSrgb(0.5) // => 0.214041
 */
export function decodeSrgb(value: number): number {
  const size = Math.abs(value);
  return Math.sign(value) * (size <= 0.04045 ? size / 12.92 : ((size + 0.055) / 1.055) ** 2.4);
}

/**
 * Tristimulus values (white: `srgbWhite`) of an sRGB colour, by the matrix that the primaries and the white
 * define, not by its published form of four decimals.
 *
 * @source iecSrgb primaries
 * @example srgbToXyz([1, 0, 0])[1] // => 21.2639
 */
export function srgbToXyz(srgb: Srgb): Xyz {
  const [r, g, b] = srgb.map(decodeSrgb) as unknown as Xyz;
  const [red, green, blue] = primaries;
  return [0, 1, 2].map((k) => r * red[k]! + g * green[k]! + b * blue[k]!) as unknown as Xyz;
}

/**
 * sRGB colour of tristimulus values whose white is `srgbWhite`; outside 0..1 where the screen cannot show it.
 *
 * @source iecSrgb primaries
 * @example xyzToSrgb([0, 0, 0]) // => [0, 0, 0]
 */
export const xyzToSrgb = (xyz: Xyz): Srgb =>
  inverse.map((row) => encodeSrgb(dot(row, xyz))) as unknown as Srgb;

/**
 * CIELAB, D65 and 2° observer, of an sRGB colour.
 *
 * @source iecSrgb primaries and encoding
 * @example srgbToLab([1, 0, 0])[1] // => 80.0901
 */
export const srgbToLab = (srgb: Srgb): Lab => xyzToLab(srgbToXyz(srgb), srgbWhite);

/**
 * sRGB colour of a CIELAB colour read under D65 and the 2° observer; outside 0..1 where the screen cannot show it.
 *
 * @source iecSrgb primaries and encoding
 * @example labToSrgb([50, 0, 0])[1] // => 0.4663
 */
export const labToSrgb = (lab: Lab): Srgb => xyzToSrgb(labToXyz(lab, srgbWhite));

/** True where the screen can show the colour; a rounding error beyond the edge still counts. */
export const inGamut = (srgb: Srgb): boolean => srgb.every((value) => value >= -1e-9 && value <= 1 + 1e-9);

/**
 * `#rrggbb` of an sRGB colour, each value clipped to 0..1; ask `inGamut` whether that changed it.
 *
 * @source iecSrgb eight-bit encoding
 * @example srgbToHex([1, 0.5, -0.2]) // => "#ff8000"
 */
export const srgbToHex = (srgb: Srgb): string =>
  `#${srgb
    .map((value) =>
      Math.round(255 * Math.min(1, Math.max(0, value)))
        .toString(16)
        .padStart(2, "0"),
    )
    .join("")}`;
