import type { Reading, Xyz } from "../../model/colour.js";
import { illuminantPower, matchingFunctions } from "./cie-tables.js";
import { curveGrid } from "./grid.js";
import { toTableGrid } from "./spline.js";

/** Weights by which a reflectance is summed to X, Y and Z, and the white of the same sum. */
export interface Weights {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly white: Xyz;
}

const total = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0);
const withWhite = (x: Float64Array, y: Float64Array, z: Float64Array): Weights => ({
  x,
  y,
  z,
  white: [total(x), total(y), total(z)],
});

function build({ illuminant, observer }: Reading): Weights {
  const power = illuminantPower[illuminant];
  const { x, y, z } = matchingFunctions[observer];
  const luminance = power.reduce((sum, s, i) => sum + s * y[i]!, 0);
  const products = (matching: readonly number[]): Float64Array =>
    Float64Array.from(power, (s, i) => (100 * s * matching[i]!) / luminance);
  return withWhite(products(x), products(y), products(z));
}

/** What the 5 nm weights become when a curve of 36 samples at 10 nm is carried to 5 nm by its spline. */
function fold(weights: Weights): Weights {
  const sums = Array.from({ length: curveGrid.count }, (_, k) => {
    const unit = new Float64Array(curveGrid.count);
    unit[k] = 1;
    return weighted(toTableGrid(unit, curveGrid.firstNm, curveGrid.stepNm), weights);
  });
  const folded = (axis: 0 | 1 | 2): Float64Array => Float64Array.from(sums, (sum) => sum[axis]);
  return withWhite(folded(0), folded(1), folded(2));
}

const remembered = (make: (reading: Reading) => Weights): ((reading: Reading) => Weights) => {
  const known = new Map<string, Weights>();
  return (reading) => {
    const key = `${reading.illuminant}/${reading.observer}`;
    const found = known.get(key) ?? make(reading);
    known.set(key, found);
    return found;
  };
};

/**
 * Weights for a reflectance at 380 to 780 nm by 5 nm: k S(λ) x̄(λ), k S ȳ, k S z̄ with k = 100 / Σ S ȳ.
 *
 * Valid for reflectance that is already on the 5 nm grid; F2, F11 and LED-B3 must not be summed any coarser.
 * @source astmE308 calculation with 5 nm data, no correction for bandpass
 * @example tableWeights({ illuminant: "D65", observer: 2 }).white[2] // => 108.8801
 */
export const tableWeights = remembered(build);

/**
 * Weights for a curve of 36 samples, 380 to 730 nm by 10 nm. They are the 5 nm weights carried through the
 * spline of `toTableGrid` (which is linear in the samples), so a sum over 36 samples is exactly the 5 nm sum
 * of the splined curve and never a bare sum at 10 nm; the white is the 5 nm white.
 *
 * @source astmE308 weights for 10 nm data, built from 5 nm products
 * @example curveWeights({ illuminant: "F11", observer: 10 }).white[2] // => 65.6085
 */
export const curveWeights = remembered((reading) => fold(tableWeights(reading)));

/** X, Y, Z of samples at the wavelengths of the weights. */
export function weighted(samples: ArrayLike<number>, { x, y, z }: Weights): Xyz {
  let sx = 0;
  let sy = 0;
  let sz = 0;
  for (let i = 0; i < x.length; i++) {
    const r = samples[i]!;
    sx += x[i]! * r;
    sy += y[i]! * r;
    sz += z[i]! * r;
  }
  return [sx, sy, sz];
}
