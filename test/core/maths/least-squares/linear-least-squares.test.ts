import fc from "fast-check";
import { expect, test } from "vitest";
import {
  solveLeastSquares,
  unitStandardErrors,
} from "../../../../src/core/maths/least-squares/linear-least-squares.js";

const entry = fc.integer({ min: -500, max: 500 }).map((value) => value / 100);

test("an exact system gives its solution, also with columns of very different size", () => {
  const fit = solveLeastSquares(
    [
      [1e-6, 2e3, 1],
      [3e-6, -1e3, 0],
      [2e-6, 5e3, 2],
    ],
    [1e-6 * 4 + 2e3 * 5 + 6, 3e-6 * 4 - 1e3 * 5, 2e-6 * 4 + 5e3 * 5 + 12],
  )!;
  [4, 5, 6].forEach((expected, j) => {
    expect(fit.x[j]! / expected).toBeCloseTo(1, 3);
  });
});

test("the residual of a fit is at right angles to every column", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(entry, entry, entry), { minLength: 4, maxLength: 12 }),
      fc.array(entry, { minLength: 12, maxLength: 12 }),
      (rows, all) => {
        const b = all.slice(0, rows.length);
        const fit = solveLeastSquares(rows, b);
        if (fit === undefined) return;
        const size = Math.max(...fit.x.map(Math.abs), 1);
        const residual = rows.map((row, i) => row.reduce((sum, v, j) => sum + v * fit.x[j]!, 0) - b[i]!);
        for (let j = 0; j < 3; j += 1)
          expect(Math.abs(rows.reduce((sum, row, i) => sum + row[j]! * residual[i]!, 0))).toBeLessThan(
            1e-10 * size,
          );
      },
    ),
  );
});

test("columns that depend on each other, or too few rows, have no solution", () => {
  expect(
    solveLeastSquares(
      [
        [1, 2],
        [2, 4],
        [3, 6],
      ],
      [1, 2, 3],
    ),
  ).toBeUndefined();
  expect(solveLeastSquares([[1, 2]], [1])).toBeUndefined();
  expect(
    solveLeastSquares(
      [
        [0, 1],
        [0, 1],
      ],
      [1, 2],
    ),
  ).toBeUndefined();
});

test("unit standard errors of a straight line are those of the textbook formula", () => {
  const x = [1, 2, 4, 7, 11];
  const fit = solveLeastSquares(
    x.map((value) => [1, value]),
    [0, 0, 0, 0, 0],
  )!;
  const mean = 5;
  const spread = x.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const [intercept, slope] = unitStandardErrors(fit.r);
  expect(slope).toBeCloseTo(1 / Math.sqrt(spread), 14);
  expect(intercept).toBeCloseTo(Math.sqrt(1 / 5 + mean ** 2 / spread), 14);
});
