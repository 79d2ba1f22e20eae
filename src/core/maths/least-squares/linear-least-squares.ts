import { norm } from "./norm.js";

/** Rows of equal length. */
export type Matrix = readonly (readonly number[])[];

/** The x of least squares and the triangular factor R of the matrix. */
export interface LinearFit {
  readonly x: readonly number[];
  readonly r: Matrix;
}

/**
 * The x that makes the sum of squares of A x - b smallest, by Householder QR; undefined where the columns of A
 * depend on each other to within rounding, or there are fewer rows than columns.
 * @source golubVanLoan2013 algorithm 5.3.2
 * @example
 * solveLeastSquares([[1, 0], [1, 1], [1, 2]], [1, 3, 5]).x // => [1, 2]
 */
export function solveLeastSquares(a: Matrix, b: readonly number[]): LinearFit | undefined {
  const columns = a[0]?.length ?? 0;
  if (a.length < columns) return undefined;
  const work = a.map((row, i) => [...row, b[i]!]);
  const scale = Array.from({ length: columns }, (_, j) => norm(a.map((row) => row[j]!)));
  for (let k = 0; k < columns; k += 1) {
    reflect(work, k);
    const pivot = Math.abs(work[k]![k]!);
    if (!(pivot > 4 * columns * Number.EPSILON * scale[k]!)) return undefined;
  }
  const r = work.slice(0, columns).map((row) => row.slice(0, columns));
  return {
    x: backSubstitute(
      r,
      work.slice(0, columns).map((row) => row[columns]!),
    ),
    r,
  };
}

/** Zeroes column k below its diagonal, and turns the columns to the right of it alike. */
function reflect(work: number[][], k: number): void {
  const width = work[0]!.length;
  const length = norm(work.slice(k).map((row) => row[k]!));
  if (length === 0) return;
  const head = work[k]![k]!;
  const diagonal = head > 0 ? -length : length;
  const v = work.slice(k).map((row) => row[k]! / (head - diagonal));
  v[0] = 1;
  const factor = (diagonal - head) / diagonal;
  for (let j = k; j < width; j += 1) {
    let dot = 0;
    for (let i = 0; i < v.length; i += 1) dot += v[i]! * work[k + i]![j]!;
    for (let i = 0; i < v.length; i += 1) work[k + i]![j]! -= factor * dot * v[i]!;
  }
}

/** x of R x = b, R upper triangular. */
function backSubstitute(r: Matrix, b: readonly number[]): number[] {
  const x = [...b];
  for (let i = x.length - 1; i >= 0; i -= 1) {
    for (let j = i + 1; j < x.length; j += 1) x[i]! -= r[i]![j]! * x[j]!;
    x[i]! /= r[i]![i]!;
  }
  return x;
}

/**
 * Roots of the diagonal of (A'A)^-1 from the R of A: the standard errors of x for readings of unit variance.
 * @example
 * unitStandardErrors(solveLeastSquares([[1, 0], [0, 2]], [0, 0]).r) // => [1, 0.5]
 */
export const unitStandardErrors = (r: Matrix): number[] =>
  r.map((_, i) => unitStandardErrorOf(r, unit(r.length, i)));

const unit = (length: number, at: number): number[] => Array.from({ length }, (_, i) => (i === at ? 1 : 0));

/**
 * The root of g' (A'A)^-1 g from the R of A: the standard error of g'x for readings of unit variance.
 * @example
 * unitStandardErrorOf(solveLeastSquares([[1, 0], [0, 2]], [0, 0]).r, [3, 8]) // => 5
 */
export function unitStandardErrorOf(r: Matrix, slopes: readonly number[]): number {
  const inverse = r.map((_, j) => backSubstitute(r, unit(r.length, j)));
  return norm(inverse.map((column) => column.reduce((sum, value, i) => sum + value * slopes[i]!, 0)));
}
