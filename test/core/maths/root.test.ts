import fc from "fast-check";
import { expect, test } from "vitest";
import { findRoot } from "../../../src/core/maths/root.js";

test("a root is found to rounding in few steps, from either sign of slope", () => {
  for (const sign of [1, -1]) {
    let calls = 0;
    const root = findRoot(
      (x) => {
        calls += 1;
        return sign * (Math.cos(x) - x);
      },
      { low: 0, high: 1.5 },
    );
    expect(root).toBeCloseTo(0.7390851332151607, 14);
    expect(calls).toBeLessThan(15);
  }
});

test("flat, steep and jumping functions are all solved by the bracket", () => {
  expect(findRoot((x) => (x - 0.3) ** 9, { low: -1, high: 2 })).toBeCloseTo(0.3, 1);
  expect(findRoot((x) => Math.atan(1e6 * (x - 0.1)), { low: -50, high: 80 })).toBeCloseTo(0.1, 12);
  expect(findRoot((x) => (x < 0.7 ? -1 : 1), { low: 0, high: 1 })).toBeCloseTo(0.7, 12);
});

test("an end that is the root is returned as it is", () => {
  expect(findRoot((x) => x, { low: 0, high: 5 })).toBe(0);
  expect(findRoot((x) => x - 5, { low: 0, high: 5 })).toBe(5);
});

test("no change of sign, or a value that is not a number, has no root", () => {
  expect(findRoot((x) => x + 10, { low: 0, high: 5 })).toBeUndefined();
  expect(findRoot(() => Number.NaN, { low: 0, high: 5 })).toBeUndefined();
  expect(findRoot((x) => (x === 0 || x === 5 ? x - 1 : Number.NaN), { low: 0, high: 5 })).toBeUndefined();
});

test("the root of a rising cubic lies where the cubic changes sign", () => {
  const coefficient = fc.double({ min: 0.01, max: 10, noNaN: true });
  fc.assert(
    fc.property(coefficient, coefficient, fc.double({ min: -90, max: 90, noNaN: true }), (a, b, place) => {
      const f = (x: number): number => a * (x - place) ** 3 + b * (x - place);
      expect(findRoot(f, { low: -100, high: 100 })).toBeCloseTo(place, 10);
    }),
  );
});
