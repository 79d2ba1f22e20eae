import type { Lab } from "../../model/colour.js";
import { labToLch } from "../cielab.js";
import { signedHueDifference } from "./hue-difference.js";

/** Length of two or three components; Math.hypot, which guards against overflow, takes several times as long. */
const length = (x: number, y: number, z = 0): number => Math.sqrt(x * x + y * y + z * z);

/** Signed differences in CIELAB, second minus first. */
export interface LabDifference {
  readonly deltaL: number;
  readonly deltaC: number;
  readonly deltaH: number;
}

/**
 * ΔL*, ΔC*ab and ΔH*ab, second minus first: lighter, stronger and towards a larger hue angle are positive.
 *
 * @source isoCie11664p4 differences of lightness, chroma and hue
 * @example labDifference([50, 3, 4], [52, 6, 8]) // => ({ deltaL: 2, deltaC: 5, deltaH: 0 })
 */
export function labDifference([L1, a1, b1]: Lab, [L2, a2, b2]: Lab): LabDifference {
  const C1 = length(a1, b1);
  const C2 = length(a2, b2);
  return { deltaL: L2 - L1, deltaC: C2 - C1, deltaH: signedHueDifference(a1, b1, a2, b2, C1 * C2) };
}

/**
 * CIE 1976 difference ΔE*ab = √(ΔL*² + Δa*² + Δb*²).
 *
 * @source isoCie11664p4 colour difference
 * @example cie76([50, 0, 0], [52, 3, 6]) // => 7
 */
export const cie76 = ([L1, a1, b1]: Lab, [L2, a2, b2]: Lab): number => length(L2 - L1, a2 - a1, b2 - b1);

/** Weights of CIE94: kL, and K1 and K2 of the chroma-dependent scales. */
interface Cie94Weights {
  readonly kL: number;
  readonly K1: number;
  readonly K2: number;
}
const graphic: Cie94Weights = { kL: 1, K1: 0.045, K2: 0.015 };
const textile: Cie94Weights = { kL: 2, K1: 0.048, K2: 0.014 };

function cie94With({ kL, K1, K2 }: Cie94Weights, standard: Lab, sample: Lab): number {
  const { deltaL, deltaC, deltaH } = labDifference(standard, sample);
  const C = length(standard[1], standard[2]);
  return length(deltaL / kL, deltaC / (1 + K1 * C), deltaH / (1 + K2 * C));
}

/**
 * CIE94 difference for graphic arts: kL = 1, SC = 1 + 0.045 C, SH = 1 + 0.015 C, C of the standard. Not symmetric.
 *
 * Meant for differences of at most 5 units.
 * @source cie116 formula and parametric factors
 * @example cie94([50, 20, 0], [50, 25, 0]) // => 2.6316
 */
export const cie94 = (standard: Lab, sample: Lab): number => cie94With(graphic, standard, sample);

/**
 * CIE94 difference for textiles: kL = 2, SC = 1 + 0.048 C, SH = 1 + 0.014 C, C of the standard. Not symmetric.
 *
 * Meant for differences of at most 5 units. The textile constants are from memory.
 * @source cie116 formula and parametric factors
 * @example cie94Textile([50, 0, 0], [54, 0, 0]) // => 2
 */
export const cie94Textile = (standard: Lab, sample: Lab): number => cie94With(textile, standard, sample);

/**
 * CMC(l:c) difference: √((ΔL/(l SL))² + (ΔC/(c SC))² + (ΔH/SH)²) with scales that depend on the standard:
 * SL = 0.040975 L/(1 + 0.01765 L), 0.511 below L = 16; SC = 0.0638 C/(1 + 0.0131 C) + 0.638;
 * SH = SC (F T + 1 - F), F = √(C⁴/(C⁴ + 1900)), T = 0.56 + |0.2 cos(h + 168°)| for 164° ≤ h ≤ 345°, else
 * 0.36 + |0.4 cos(h + 35°)|. Not symmetric.
 *
 * `lightness` l and `chroma` c [1]; 2 and 1 to judge acceptance, 1 and 1 to judge what is just seen.
 * @source isoJ03 formula
 * @example cmc([50, 0, 0], [51, 0, 0], 2, 1) // => 0.4594
 */
export function cmc(standard: Lab, sample: Lab, lightness: number, chroma: number): number {
  const { deltaL, deltaC, deltaH } = labDifference(standard, sample);
  const [L, C, h] = labToLch(standard);
  const cosine = (degrees: number): number => Math.abs(Math.cos((degrees * Math.PI) / 180));
  const SL = L < 16 ? 0.511 : (0.040975 * L) / (1 + 0.01765 * L);
  const SC = (0.0638 * C) / (1 + 0.0131 * C) + 0.638;
  const F = Math.sqrt(C ** 4 / (C ** 4 + 1900));
  const T = h >= 164 && h <= 345 ? 0.56 + 0.2 * cosine(h + 168) : 0.36 + 0.4 * cosine(h + 35);
  return length(deltaL / (lightness * SL), deltaC / (chroma * SC), deltaH / (SC * (F * T + 1 - F)));
}

/**
 * CMC(1:1), for what is just seen.
 *
 * @source isoJ03 formula
 * @example cmc11([50, 0, 0], [51, 0, 0]) // => 0.9189
 */
export const cmc11 = (standard: Lab, sample: Lab): number => cmc(standard, sample, 1, 1);

/**
 * CMC(2:1), for what is accepted.
 *
 * @source isoJ03 formula
 * @example cmc21([50, 0, 0], [51, 0, 0]) // => 0.4594
 */
export const cmc21 = (standard: Lab, sample: Lab): number => cmc(standard, sample, 2, 1);
