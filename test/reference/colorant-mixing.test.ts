import { expect, test } from "vitest";
import { reflectanceOf, withSurface } from "../../src/core/colour/spectrum/kubelka-munk.js";
import { boundedLeastSquares } from "../../src/core/maths/least-squares/bounded-least-squares.js";
import { solveLeastSquares } from "../../src/core/maths/least-squares/linear-least-squares.js";
import { mixedKs } from "../../src/core/recipe/mixture/mixed-ks.js";

// The published papers on the mixing of colorants print no example with all its numbers, so the cases are constructed with
// exact inputs; the formulas are the published ones.
// source: allen1966 single-constant mixture, its inversion by least squares, correction of a trial by the slopes
const nm = [400, 450, 500, 550, 600, 650, 700];
const blank = [0.02, 0.016, 0.013, 0.012, 0.011, 0.01, 0.01];
const unit = [
  [0.04, 0.02, 0.9],
  [0.05, 0.06, 2.1],
  [0.2, 0.9, 1.4],
  [0.8, 2.6, 0.35],
  [2.4, 1.1, 0.08],
  [1.3, 0.2, 0.04],
  [0.35, 0.05, 0.03],
];
const columns = [0, 1, 2].map((j) => unit.map((row) => row[j]!));

const near = (actual: number, expected: number, relative: number): void =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

const allNear = (actual: ArrayLike<number>, expected: readonly number[], relative: number): void => {
  expect(actual).toHaveLength(expected.length);
  expected.forEach((value, i) => {
    near(actual[i]!, value, relative);
  });
};

test("three colorants on a blank: K/S, reflectance, and back to the amounts", () => {
  const ks = mixedKs(blank, columns, [0.5, 0.3, 0.2]);
  expect(ks).toHaveLength(nm.length);
  allNear(ks, [0.226, 0.479, 0.663, 1.262, 1.557, 0.728, 0.206], 1e-7);
  const reflectance = [0.51672149, 0.38930234, 0.33425285, 0.23304855, 0.20365153, 0.31875055, 0.53188132];
  allNear(ks.map(reflectanceOf), reflectance, 1e-7);
  const back = solveLeastSquares(
    unit,
    Array.from(ks, (value, i) => value - blank[i]!),
  );
  allNear(back!.x, [0.5, 0.3, 0.2], 1e-6);
});

test("a disturbed reflectance: amounts by plain least squares, and weighted by 1/(K/S)", () => {
  const ks = [0.5611, 0.4324, 0.3747, 0.2637, 0.2325, 0.358, 0.5614].map((r) => (1 - r) ** 2 / (2 * r));
  const added = ks.map((value, i) => value - blank[i]!);
  const plain = solveLeastSquares(unit, added)!.x;
  allNear(plain, [0.4022319, 0.2468689, 0.1506308], 1e-6);
  const left = added.reduce(
    (sum, value, i) => sum + (value - unit[i]!.reduce((dot, k, j) => dot + k * plain[j]!, 0)) ** 2,
    0,
  );
  near(left, 0.000295444, 1e-5);
  const weighted = solveLeastSquares(
    unit.map((row, i) => row.map((value) => value / ks[i]!)),
    added.map((value, i) => value / ks[i]!),
  );
  allNear(weighted!.x, [0.4025993, 0.2461909, 0.1492884], 1e-6);
});

test("a target that asks for a negative amount: plain and bounded least squares", () => {
  const target = [0.03, 0.05, 0.3, 1.2, 2, 1.15, 0.33];
  allNear(solveLeastSquares(unit, target)!.x, [0.7674246, 0.2134067, -0.008206967], 1e-6);
  const { parameters, residualSum } = boundedLeastSquares({
    residuals: (c, out) => {
      for (let i = 0; i < target.length; i++)
        out[i] = unit[i]!.reduce((sum, k, j) => sum + k * c[j]!, 0) - target[i]!;
    },
    count: target.length,
    start: [0.5, 0.5, 0.5],
    low: [0, 0, 0],
    high: [9, 9, 9],
  });
  near(parameters[0]!, 0.7681486, 1e-6);
  near(parameters[1]!, 0.2107394, 1e-6);
  expect(parameters[2]).toBe(0);
  near(Math.sqrt(residualSum), 0.153265, 1e-5);
});

test("correction after a trial: the amounts that change L, a, b as wanted", () => {
  const slopes = [
    [-8.2, -5.1, -2.4],
    [14.5, -6.3, 1.1],
    [3.2, -9.8, 18.7],
  ];
  const correction = solveLeastSquares(slopes, [0.9, -1.4, 2.1])!.x;
  allNear(correction, [-0.12082052, -0.035926342, 0.11414693], 1e-7);
});

test("two nearly dependent colorants ask for large opposite amounts, and limits keep them out", () => {
  const slopes = [
    [-8.2, -7.9],
    [14.5, 13.8],
    [3.2, 3.4],
  ];
  const wanted = [0.9, -1.4, 2.1];
  const { x } = solveLeastSquares(slopes, wanted)!;
  allNear(x, [-6.340428, 6.539641], 1e-5);
  const left = wanted.map((value, i) => value - slopes[i]![0]! * x[0]! - slopes[i]![1]! * x[1]!);
  near(Math.hypot(...left), 0.659015, 1e-5);
  const bounded = boundedLeastSquares({
    residuals: (c, out) => {
      for (let i = 0; i < 3; i++) out[i] = slopes[i]![0]! * c[0]! + slopes[i]![1]! * c[1]! - wanted[i]!;
    },
    count: 3,
    start: [0, 0],
    low: [-0.2, -0.2],
    high: [0.2, 0.2],
  });
  expect(bounded.residualSum).toBeGreaterThan(0.659015 ** 2);
  expect(Math.max(...bounded.parameters.map(Math.abs))).toBeLessThanOrEqual(0.2);
});

test("two constants: K/S of a white and two pigments at three wavelengths, and their reflectance", () => {
  // Constructed. The program mixes by one constant; this holds its reflectance to the two-constant sums.
  const c = [0.7, 0.2, 0.1];
  const K = [
    [0.002, 0.001, 0.001],
    [0.6, 0.1, 0.02],
    [0.05, 0.8, 0.3],
  ];
  const S = [
    [1, 1, 0.98],
    [0.08, 0.1, 0.12],
    [0.12, 0.1, 0.09],
  ];
  const sum = (rows: readonly (readonly number[])[], w: number): number =>
    c.reduce((total, part, i) => total + part * rows[i]![w]!, 0);
  const ks = [0, 1, 2].map((w) => sum(K, w) / sum(S, w));
  allNear(ks, [0.17362637, 0.13794521, 0.048261474], 1e-7);
  allNear(ks.map(reflectanceOf), [0.5592984, 0.59488048, 0.73385391], 1e-7);
});

test("reflectance with the surface's own reflection", () => {
  // source: saunderson1942 formula from memory, evaluated
  const internal = [0.02, 0.1, 0.3, 0.5, 0.8, 0.95];
  const measured = internal.map((r) => withSurface(r, { k1: 0.04, k2: 0.6 }));
  allNear(measured, [0.04777328, 0.08085106, 0.1804878, 0.3142857, 0.6307692, 0.8883721], 1e-6);
});
