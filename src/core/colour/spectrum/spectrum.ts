import type { Lab, Reading, Xyz } from "../../model/colour.js";
import { xyzToLab } from "../cielab.js";
import { toTableGrid } from "./spline.js";
import { curveWeights, tableWeights, weighted } from "./weights.js";

/** Reflectance [0..1] at equal steps. */
export interface Spectrum {
  readonly firstNm: number;
  /** 5 or 10. */
  readonly stepNm: number;
  readonly reflectance: ArrayLike<number>;
}

/**
 * Tristimulus values of a reflectance curve at 5 or 10 nm: brought to 380-780 nm by 5 nm, then summed.
 *
 * reflectance [0..1]; firstNm a multiple of 5; result with Y = 100 for the perfect reflecting diffuser.
 * @source astmE308 calculation with 5 nm data
 * @example spectrumXyz({ firstNm: 400, stepNm: 10, reflectance: Array(31).fill(0.5) }, { illuminant: "A", observer: 2 })[0] // => 54.9245
 */
export const spectrumXyz = ({ reflectance, firstNm, stepNm }: Spectrum, reading: Reading): Xyz =>
  weighted(toTableGrid(reflectance, firstNm, stepNm), tableWeights(reading));

/**
 * CIELAB of a reflectance curve at 5 or 10 nm, against the white of the same sum.
 *
 * @source isoCie11664p4 definition of L*, a*, b*
 * @example spectrumLab({ firstNm: 400, stepNm: 10, reflectance: Array(31).fill(0.2) }, { illuminant: "F11", observer: 10 })[0] // => 51.8372
 */
export const spectrumLab = (spectrum: Spectrum, reading: Reading): Lab =>
  xyzToLab(spectrumXyz(spectrum, reading), tableWeights(reading).white);

/**
 * CIELAB of a curve of 36 samples, 380 to 730 nm by 10 nm: the same as `spectrumLab`, by weights made once.
 *
 * curve [0..1].
 * @source isoCie11664p4 definition of L*, a*, b*
 * @example curveLab(new Float64Array(36).fill(0.2), { illuminant: "D65", observer: 10 })[0] // => 51.8372
 */
export function curveLab(curve: ArrayLike<number>, reading: Reading): Lab {
  const weights = curveWeights(reading);
  return xyzToLab(weighted(curve, weights), weights.white);
}
