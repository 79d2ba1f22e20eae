import type { Lab } from "../../model/colour.js";
import { leastProduct, signedHueDifference } from "./hue-difference.js";

const radians = Math.PI / 180;
const cos6 = Math.cos(6 * radians);
const sin6 = Math.sin(6 * radians);
const cos30 = Math.cos(30 * radians);
const sin30 = Math.sin(30 * radians);
const cos63 = Math.cos(63 * radians);
const sin63 = Math.sin(63 * radians);
const twentyFive7 = 25 ** 7;
/** Below a mean hue of 125° the rotation term is under 1e-15. */
const cos125 = Math.cos(125 * radians);
const turn = 2 * Math.PI;

/**
 * Mean hue [radians] where two hues lie nearly opposite, decided by the side on which the second lies:
 * the arctangents alone decide by their last bit. Exactly opposite hues are averaged unchanged.
 */
function meanOfOpposites(p1: number, b1: number, p2: number, b2: number): number {
  const cross = p1 * b2 - p2 * b1;
  const h1 = (Math.atan2(b1, p1) + turn) % turn;
  const h2 = (Math.atan2(b2, p2) + turn) % turn;
  const wrapped = cross > 0 ? h2 < h1 : cross < 0 ? h2 > h1 : false;
  const mean = (h1 + h2) / 2;
  return wrapped ? (mean < Math.PI ? mean + Math.PI : mean - Math.PI) : mean;
}

/**
 * CIEDE2000 (kC = kH = 1) of many pairs, from and into plain arrays.
 *
 * `pairs` holds L*, a*, b* of the first and of the second colour, six numbers a pair; `out` takes one number a
 * pair; `terms`, if given, takes ΔL', ΔC', ΔH' (second minus first, unweighted), three a pair; `kL` [1] divides
 * the lightness difference; `components`, if given, takes three numbers a pair whose squares add up to the square of
 * the difference (l² + c² + h² + R c h = l² + (c + R h/2)² + (1 - R²/4) h²), as least squares need them. Angles are kept as sines and cosines where that says the same, so that most pairs need
 * one arctangent at the most.
 * Valid for differences of up to about 5 units; beyond that it is defined but no longer backed by judgements.
 * Discontinuous where hues lie 180° apart.
 * @source isoCie11664p6 definition of the CIEDE2000 difference
 * @source sharma2005 eqs. 2 to 22
 * @example ciede2000Pairs(Float64Array.of(50, 2.6772, -79.7751, 50, 0, -82.7485), new Float64Array(1))[0] // => 2.0425
 */
export function ciede2000Pairs(
  pairs: Float64Array,
  out: Float64Array,
  terms?: Float64Array,
  kL = 1,
  components?: Float64Array,
): Float64Array {
  const count = Math.floor(pairs.length / 6);
  for (let n = 0, i = 0; n < count; n++, i += 6) {
    const L1 = pairs[i]!;
    const a1 = pairs[i + 1]!;
    const b1 = pairs[i + 2]!;
    const L2 = pairs[i + 3]!;
    const a2 = pairs[i + 4]!;
    const b2 = pairs[i + 5]!;

    const meanC = (Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2;
    const meanC2 = meanC * meanC;
    const meanC7 = meanC2 * meanC2 * meanC2 * meanC;
    const stretch = 1.5 - 0.5 * Math.sqrt(meanC7 / (meanC7 + twentyFive7));
    const p1 = a1 * stretch;
    const p2 = a2 * stretch;
    const C1 = Math.sqrt(p1 * p1 + b1 * b1);
    const C2 = Math.sqrt(p2 * p2 + b2 * b2);
    const deltaL = L2 - L1;
    const deltaC = C2 - C1;
    const product = C1 * C2;

    let deltaH = 0;
    let cos = 1;
    let sin = 0;
    if (product > leastProduct) {
      deltaH = signedHueDifference(p1, b1, p2, b2, product);
      if (p1 * p2 + b1 * b2 > -0.999 * product) {
        const x = p1 * C2 + p2 * C1;
        const y = b1 * C2 + b2 * C1;
        const length = Math.sqrt(x * x + y * y);
        cos = x / length;
        sin = y / length;
      } else {
        const hue = meanOfOpposites(p1, b1, p2, b2);
        cos = Math.cos(hue);
        sin = Math.sin(hue);
      }
    }

    const cos2 = 2 * cos * cos - 1;
    const sin2 = 2 * sin * cos;
    const cos3 = cos * cos2 - sin * sin2;
    const sin3 = sin * cos2 + cos * sin2;
    const cos4 = 2 * cos2 * cos2 - 1;
    const sin4 = 2 * sin2 * cos2;
    const T =
      1 -
      0.17 * (cos * cos30 + sin * sin30) +
      0.24 * cos2 +
      0.32 * (cos3 * cos6 - sin3 * sin6) -
      0.2 * (cos4 * cos63 + sin4 * sin63);

    const meanCp = (C1 + C2) / 2;
    let rotation = 0;
    if (sin < 0 || cos < cos125) {
      const hue = Math.atan2(sin, cos) / radians;
      const away = ((hue < 0 ? hue + 360 : hue) - 275) / 25;
      const mean2 = meanCp * meanCp;
      const mean7 = mean2 * mean2 * mean2 * meanCp;
      rotation =
        -2 * Math.sqrt(mean7 / (mean7 + twentyFive7)) * Math.sin(60 * radians * Math.exp(-away * away));
    }

    const fromMiddle = (L1 + L2) / 2 - 50;
    const fromMiddle2 = fromMiddle * fromMiddle;
    const l = deltaL / (kL * (1 + (0.015 * fromMiddle2) / Math.sqrt(20 + fromMiddle2)));
    const c = deltaC / (1 + 0.045 * meanCp);
    const h = deltaH / (1 + 0.015 * meanCp * T);
    out[n] = Math.sqrt(l * l + c * c + h * h + rotation * c * h);
    if (terms !== undefined) {
      terms[3 * n] = deltaL;
      terms[3 * n + 1] = deltaC;
      terms[3 * n + 2] = deltaH;
    }
    if (components !== undefined) {
      components[3 * n] = l;
      components[3 * n + 1] = c + (rotation / 2) * h;
      components[3 * n + 2] = Math.sqrt(1 - (rotation * rotation) / 4) * h;
    }
  }
  return out;
}

const one = new Float64Array(6);
const oneOut = new Float64Array(1);
const oneTerms = new Float64Array(3);

/**
 * CIEDE2000 difference of two colours read alike, kL = kC = kH = 1.
 *
 * @source isoCie11664p6 definition of the CIEDE2000 difference
 * @example ciede2000([50, 2.5, 0], [73, 25, -18]) // => 27.1492
 */
export function ciede2000(first: Lab, second: Lab): number {
  one.set(first);
  one.set(second, 3);
  return ciede2000Pairs(one, oneOut)[0]!;
}

/**
 * Three signed components of a CIEDE2000 difference, second minus first, into `components`: their squares add up to
 * the square of the difference.
 *
 * @source isoCie11664p6 definition of the CIEDE2000 difference
 * @example Math.hypot(...ciede2000Components([50, 2.6772, -79.7751], [50, 0, -82.7485], new Float64Array(3))) // => 2.0425
 */
export function ciede2000Components(first: Lab, second: Lab, components: Float64Array): Float64Array {
  one.set(first);
  one.set(second, 3);
  ciede2000Pairs(one, oneOut, undefined, 1, components);
  return components;
}

/**
 * CIEDE2000 difference for textiles, kL = 2, kC = kH = 1: a difference in lightness counts half.
 *
 * Meant for differences of at most 5 units. That textiles are judged with kL = 2 is from memory.
 * @source isoCie11664p6 definition of the CIEDE2000 difference and note on the parametric factors
 * @example ciede2000Textile([50, 0, 0], [54, 0, 0]) // => 1.9758
 */
export function ciede2000Textile(first: Lab, second: Lab): number {
  one.set(first);
  one.set(second, 3);
  return ciede2000Pairs(one, oneOut, undefined, 2)[0]!;
}

/** CIEDE2000 with its signed parts, second minus first. */
export interface Ciede2000Terms {
  readonly deltaE: number;
  readonly deltaL: number;
  readonly deltaC: number;
  readonly deltaH: number;
}

/**
 * CIEDE2000 with ΔL', ΔC', ΔH' (second minus first, unweighted; ΔH' positive where the hue angle grows).
 *
 * @source isoCie11664p6 definition of the CIEDE2000 difference
 * @example ciede2000Terms([50, 2.5, 0], [50, 0, -2.5]).deltaH // => -4.3299
 */
export function ciede2000Terms(first: Lab, second: Lab): Ciede2000Terms {
  one.set(first);
  one.set(second, 3);
  const deltaE = ciede2000Pairs(one, oneOut, oneTerms)[0]!;
  return { deltaE, deltaL: oneTerms[0]!, deltaC: oneTerms[1]!, deltaH: oneTerms[2]! };
}
