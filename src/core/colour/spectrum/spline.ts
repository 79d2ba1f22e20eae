import { tableGrid } from "./grid.js";

/**
 * Second derivatives times step²/6 of the cubic spline through equally spaced values, its third derivative
 * continuous at the second and the last but one (no knot there), so that an end needs no assumed slope.
 */
function curvatures(values: ArrayLike<number>): Float64Array {
  const n = values.length;
  const m = new Float64Array(n);
  const factor = new Float64Array(n);
  const bend = (i: number): number => values[i - 1]! - 2 * values[i]! + values[i + 1]!;
  m[1] = bend(1) / 6;
  m[n - 2] = bend(n - 2) / 6;
  for (let i = 2; i < n - 2; i++) {
    factor[i] = 1 / (4 - factor[i - 1]!);
    m[i] = (bend(i) - m[i - 1]!) * factor[i]!;
  }
  for (let i = n - 3; i > 1; i--) m[i] = m[i]! - factor[i]! * m[i + 1]!;
  m[0] = 2 * m[1]! - m[2]!;
  m[n - 1] = 2 * m[n - 2]! - m[n - 3]!;
  return m;
}

/**
 * Values at 380 to 780 nm by 5 nm of a curve sampled at equal steps: the cubic spline between the
 * samples, the first and last value held beyond them. The result is linear in the values, and a sample that
 * falls on the 5 nm grid is kept as it is.
 *
 * values [any], firstNm [nm], stepNm [nm]. Valid for at least four samples.
 * @source cie15 where interpolation and extrapolation of spectral data are treated
 * @example toTableGrid([0, 1, 8, 27, 64], 500, 10)[24 + 5] // => 15.625
 * @example toTableGrid([0, 1, 8, 27, 64], 500, 10)[80] // => 64
 */
export function toTableGrid(values: ArrayLike<number>, firstNm: number, stepNm: number): Float64Array {
  const last = values.length - 1;
  const m = stepNm === tableGrid.stepNm ? undefined : curvatures(values);
  const out = new Float64Array(tableGrid.count);
  for (let i = 0; i < out.length; i++) {
    const at = (tableGrid.firstNm + i * tableGrid.stepNm - firstNm) / stepNm;
    const j = Math.min(Math.max(Math.floor(at), 0), last);
    const t = at - j;
    if (at <= 0 || at >= last || t === 0) out[i] = values[j]!;
    else if (m === undefined) throw new Error(`${firstNm} nm is not on the 5 nm grid`);
    else {
      const s = 1 - t;
      out[i] = s * values[j]! + t * values[j + 1]! + (s * s * s - s) * m[j]! + (t * t * t - t) * m[j + 1]!;
    }
  }
  return out;
}
