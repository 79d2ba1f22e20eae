import fc from "fast-check";
import { expect, test } from "vitest";
import { solveLeastSquares } from "../../../src/core/maths/linear-least-squares.js";
import { solveNonNegative } from "../../../src/core/maths/non-negative-least-squares.js";

const entry = fc.integer({ min: -500, max: 500 }).map((value) => value / 100);
const sumOfSquares = (
  a: readonly (readonly number[])[],
  x: readonly number[],
  b: readonly number[],
): number => a.reduce((sum, row, i) => sum + (row.reduce((s, v, j) => s + v * x[j]!, 0) - b[i]!) ** 2, 0);

/** The smallest sum over all choices of the columns that may differ from 0. */
function byTryingAll(a: readonly (readonly number[])[], b: readonly number[]): number {
  const width = a[0]!.length;
  let best = sumOfSquares(a, new Array(width).fill(0), b);
  for (let mask = 1; mask < 1 << width; mask += 1) {
    const list = [...Array(width).keys()].filter((j) => mask & (1 << j));
    const fit = solveLeastSquares(
      a.map((row) => list.map((j) => row[j]!)),
      b,
    );
    if (fit === undefined || fit.x.some((value) => value < 0)) continue;
    const x: number[] = new Array(width).fill(0);
    list.forEach((j, k) => {
      x[j] = fit.x[k]!;
    });
    best = Math.min(best, sumOfSquares(a, x, b));
  }
  return best;
}

test("the sum is the smallest of all choices of active columns, and no entry is negative", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(entry, entry, entry), { minLength: 3, maxLength: 8 }),
      fc.array(entry, { minLength: 8, maxLength: 8 }),
      (a, all) => {
        const b = all.slice(0, a.length);
        const x = solveNonNegative(a, b);
        for (const value of x) expect(value).toBeGreaterThanOrEqual(0);
        expect(sumOfSquares(a, x, b)).toBeLessThanOrEqual(byTryingAll(a, b) + 1e-9);
      },
    ),
    { numRuns: 500 },
  );
});

test("a solution without negative entries is that of plain least squares", () => {
  const a = [
    [1, 0.2],
    [0.3, 1],
    [0.5, 0.5],
  ];
  expect(solveNonNegative(a, [1.4, 2.3, 1.5])).toEqual([expect.closeTo(1, 12), expect.closeTo(2, 12)]);
});

test("equal columns share nothing out and still end", () => {
  const x = solveNonNegative(
    [
      [1, 1],
      [2, 2],
    ],
    [1, 2],
  );
  expect(x[0]! + x[1]!).toBeCloseTo(1, 12);
  expect(solveNonNegative([[1], [1]], [-1, -1])).toEqual([0]);
});
