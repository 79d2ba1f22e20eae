import fc from "fast-check";
import { expect, test } from "vitest";
import { findMinimum } from "../../../src/core/maths/minimum.js";

test("the vertex of a parabola is found wherever it lies in the bracket", () => {
  fc.assert(
    fc.property(fc.double({ min: -9, max: 9, noNaN: true }), (place) => {
      expect(findMinimum((x) => 3 + (x - place) ** 2, { low: -10, high: 10 }).x).toBeCloseTo(place, 6);
    }),
  );
});

test("a kink and a minimum at the end of the bracket are found", () => {
  expect(findMinimum((x) => Math.abs(x - 0.4), { low: -3, high: 2 }).x).toBeCloseTo(0.4, 6);
  expect(findMinimum((x) => x, { low: 1, high: 2 }).x).toBeCloseTo(1, 6);
  expect(findMinimum((x) => -x, { low: 1, high: 2 }).x).toBeCloseTo(2, 6);
  expect(findMinimum((x) => Math.cos(x), { low: 1, high: 6 })).toMatchObject({ value: -1 });
});

test("a smooth minimum takes few evaluations, and the value is that of the place", () => {
  let calls = 0;
  const f = (x: number): number => {
    calls += 1;
    return Math.exp(x) - 3 * x;
  };
  const found = findMinimum(f, { low: 0, high: 4 });
  expect(found.x).toBeCloseTo(Math.log(3), 7);
  expect(calls).toBeLessThan(20);
  expect(found.value).toBe(f(found.x));
});

test("a constant function ends", () => {
  const { x, value } = findMinimum(() => 2, { low: 0, high: 1 });
  expect(value).toBe(2);
  expect(x).toBeGreaterThanOrEqual(0);
  expect(x).toBeLessThanOrEqual(1);
});
