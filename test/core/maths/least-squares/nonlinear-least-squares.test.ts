import { expect, test } from "vitest";
import {
  solveLeastSquares,
  unitStandardErrors,
} from "../../../../src/core/maths/least-squares/linear-least-squares.js";
import { fitNonlinear } from "../../../../src/core/maths/least-squares/nonlinear-least-squares.js";

const x = [1, 2, 3, 5, 8];
const y = [2.1, 3.9, 6.2, 9.8, 16.3];

test("a straight line has the constants, errors and sum of linear least squares", () => {
  const rows = x.map((value) => [1, value]);
  const linear = solveLeastSquares(rows, y)!;
  const fit = fitNonlinear({ start: [50, -7], residuals: ([a, b]) => x.map((v, i) => y[i]! - a! - b! * v) });
  const deviation = Math.sqrt(fit.residualSum / fit.degreesOfFreedom);
  expect(fit.degreesOfFreedom).toBe(3);
  fit.parameters.forEach((value, j) => {
    expect(value).toBeCloseTo(linear.x[j]!, 9);
    expect(fit.standardErrors![j]! / (unitStandardErrors(linear.r)[j]! * deviation)).toBeCloseTo(1, 8);
  });
});

test("given slopes lead to the same place as numeric ones", () => {
  const residuals = ([a, b]: readonly number[]) => x.map((v, i) => y[i]! - a! * v ** b!);
  const jacobian = ([a, b]: readonly number[]) => x.map((v) => [-(v ** b!), -a! * v ** b! * Math.log(v)]);
  const numeric = fitNonlinear({ start: [1, 1], residuals });
  const given = fitNonlinear({ start: [1, 1], residuals, jacobian });
  expect(given.converged && numeric.converged).toBe(true);
  given.parameters.forEach((value, j) => {
    expect(value / numeric.parameters[j]!).toBeCloseTo(1, 9);
  });
});

test("as many readings as constants are fitted exactly, without standard errors", () => {
  const fit = fitNonlinear({ start: [1, 1], residuals: ([a, b]) => [2 - a! * b!, 3 - a! - b!] });
  expect(fit.residualSum).toBeLessThan(1e-24);
  expect(fit.standardErrors).toBeUndefined();
});

test("constants that the readings do not tell apart are reported as not converged", () => {
  const fit = fitNonlinear({ start: [1, 1], residuals: ([a, b]) => x.map((v, i) => y[i]! - (a! + b!) * v) });
  expect(fit.converged).toBe(false);
  expect(fit.standardErrors).toBeUndefined();
});

test("a start that is not allowed comes back as not converged, a step that is not allowed is shortened", () => {
  const logarithm = ([a]: readonly number[]) =>
    x.map((v, i) => Math.log(a! * v) - Math.log(2 * v) + 0.01 * (i - 2));
  expect(fitNonlinear({ start: [-1], residuals: logarithm }).converged).toBe(false);
  const fit = fitNonlinear({ start: [1e-6], residuals: logarithm });
  expect(fit.converged).toBe(true);
  expect(fit.parameters[0]).toBeCloseTo(2, 9);
});
