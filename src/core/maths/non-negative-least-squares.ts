import { type Matrix, solveLeastSquares } from "./linear-least-squares.js";
import { norm } from "./norm.js";

/**
 * The x >= 0 that makes the sum of squares of A x - b smallest, by an active set.
 * Meant for a few columns; columns that depend on others stay at 0.
 * @source lawsonHanson1974 chapter 23, algorithm NNLS
 * @example
 * solveNonNegative([[1, 1], [0, 1]], [1, -1]) // => [1, 0]
 */
export function solveNonNegative(a: Matrix, b: readonly number[]): number[] {
  const columns = a[0]?.length ?? 0;
  let x: number[] = new Array(columns).fill(0);
  const free = new Set<number>();
  const barred = new Set<number>();
  for (let round = 0; round < 10 * columns + 10; round += 1) {
    const next = steepest(a, b, x, (j) => free.has(j) || barred.has(j));
    if (next === undefined) return x;
    free.add(next);
    const fitted = descend(a, b, x, free);
    if (fitted === undefined || !(fitted[next]! > 0)) {
      free.delete(next);
      barred.add(next);
    } else {
      x = fitted;
      barred.clear();
      for (const j of free) if (x[j] === 0) free.delete(j);
    }
  }
  return x;
}

/** The column whose growth lowers the sum most, if any does by more than rounding. */
function steepest(a: Matrix, b: readonly number[], x: readonly number[], skip: (j: number) => boolean) {
  const residual = a.map((row, i) => b[i]! - row.reduce((sum, value, j) => sum + value * x[j]!, 0));
  const size = norm(b);
  let best: number | undefined;
  let bestSlope = 0;
  for (let j = 0; j < x.length; j += 1) {
    if (skip(j)) continue;
    const length = norm(a.map((row) => row[j]!));
    const slope = a.reduce((sum, row, i) => sum + row[j]! * residual[i]!, 0);
    if (slope > 1e-14 * length * size && slope / length > bestSlope) [best, bestSlope] = [j, slope / length];
  }
  return best;
}

/** From x towards the least squares of the free columns, dropping each that reaches 0 on the way. */
function descend(a: Matrix, b: readonly number[], from: readonly number[], free: Set<number>) {
  let x = [...from];
  const columns = new Set(free);
  while (columns.size > 0) {
    const list = [...columns];
    const solution = solveLeastSquares(
      a.map((row) => list.map((j) => row[j]!)),
      b,
    );
    if (solution === undefined) return undefined;
    const full: number[] = new Array(x.length).fill(0);
    list.forEach((j, k) => {
      full[j] = solution.x[k]!;
    });
    const blocking = list.filter((j) => full[j]! <= 0);
    if (blocking.length === 0) return full;
    const share = (j: number): number => (x[j] === 0 ? 0 : x[j]! / (x[j]! - full[j]!));
    const step = Math.min(...blocking.map(share));
    x = x.map((value, j) => value + step * (full[j]! - value));
    for (const j of blocking) if (share(j) <= step || x[j]! <= 0) columns.delete(j);
    for (let j = 0; j < x.length; j += 1) if (!columns.has(j)) x[j] = 0;
  }
  return x;
}
