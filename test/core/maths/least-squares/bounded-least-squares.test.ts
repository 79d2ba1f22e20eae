import { expect, test } from "vitest";
import { boundedLeastSquares } from "../../../../src/core/maths/least-squares/bounded-least-squares.js";

const rosenbrock = (p: Float64Array, out: Float64Array): void => {
  out[0] = 10 * (p[1]! - p[0]! ** 2);
  out[1] = 1 - p[0]!;
};
const wide = { count: 2, start: [-1.2, 1], low: [-5, -5], high: [5, 5] };

test("finds the end of a curved valley", () => {
  const { parameters, residualSum } = boundedLeastSquares({ residuals: rosenbrock, ...wide });
  expect(parameters[0]).toBeCloseTo(1, 6);
  expect(parameters[1]).toBeCloseTo(1, 6);
  expect(residualSum).toBeLessThan(1e-12);
});

test("stops at a limit, and finds the best of the other parameters there", () => {
  const { parameters } = boundedLeastSquares({ residuals: rosenbrock, ...wide, high: [0.5, 5] });
  expect(parameters[0]).toBe(0.5);
  expect(parameters[1]).toBeCloseTo(0.25, 6);
});

test("takes a start outside the limits to them", () => {
  const residuals = (p: Float64Array, out: Float64Array): void => {
    out[0] = p[0]! + 3;
  };
  expect(boundedLeastSquares({ residuals, count: 1, start: [9], low: [0], high: [2] }).parameters[0]).toBe(0);
});

test("ends where enough is reached", () => {
  let calls = 0;
  const residuals = (p: Float64Array, out: Float64Array): void => {
    calls++;
    rosenbrock(p, out);
  };
  const { residualSum } = boundedLeastSquares({ residuals, ...wide, enough: 5 });
  const first = calls;
  expect(residualSum).toBeLessThanOrEqual(5);
  boundedLeastSquares({ residuals, ...wide });
  expect(calls - first).toBeGreaterThan(first);
});
