import type { Lab, Reading, Xyz } from "../../model/colour.js";
import { xyzToLab } from "../cielab.js";
import { type Spectrum, spectrumXyz } from "../spectrum/spectrum.js";
import { tableWeights } from "../spectrum/weights.js";
import { cie76 } from "./cie-differences.js";

/** How a pair that matches under one illuminant parts under another. */
export interface Metamerism {
  /** Difference under the second illuminant, the residual under the first taken out. */
  readonly index: number;
  /** The same with nothing taken out. */
  readonly uncorrected: number;
  /** Difference under the first illuminant: 0 for a perfect match. */
  readonly atReference: number;
}

/**
 * Special index of metamerism for a change of illuminant: the colour difference of a pair under the test
 * reading, after the tristimulus values of the second are multiplied by (first/second) under the reference
 * reading, so that only what the change of illuminant adds is counted.
 *
 * Reflectance [0..1]; `difference` is CIE76 unless given.
 * @source cie15 special index of metamerism: change in illuminant
 * @example metamerism({ firstNm: 400, stepNm: 10, reflectance: Array(31).fill(0.4) }, { firstNm: 400, stepNm: 10, reflectance: Array(31).fill(0.5) }, { illuminant: "D65", observer: 10 }, { illuminant: "A", observer: 10 }).index // => 0.0000
 */
export function metamerism(
  first: Spectrum,
  second: Spectrum,
  reference: Reading,
  test: Reading,
  difference: (one: Lab, other: Lab) => number = cie76,
): Metamerism {
  const [at1, at2] = [spectrumXyz(first, reference), spectrumXyz(second, reference)];
  const [to1, to2] = [spectrumXyz(first, test), spectrumXyz(second, test)];
  const corrected = to2.map((value, k) => value * (at1[k]! / at2[k]!)) as unknown as Xyz;
  const lab = (xyz: Xyz, reading: Reading): Lab => xyzToLab(xyz, tableWeights(reading).white);
  const at = (one: Xyz, other: Xyz, reading: Reading): number =>
    difference(lab(one, reading), lab(other, reading));
  return {
    index: at(to1, corrected, test),
    uncorrected: at(to1, to2, test),
    atReference: at(at1, at2, reference),
  };
}
