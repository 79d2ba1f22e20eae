import { expect, test } from "vitest";
import { integrate } from "../../../src/core/maths/quadrature.js";

test("one pass is exact for x²², so the nodes and weights are right", () => {
  for (let power = 0; power <= 22; power += 2)
    expect(integrate((x) => x ** power, -1, 1, Number.POSITIVE_INFINITY)).toBeCloseTo(2 / (power + 1), 14);
});

test("the estimate of the error rests on a rule that is exact for x¹² and off for x¹⁴", () => {
  const calls = (power: number): number => {
    let count = 0;
    const curve = (x: number): number => {
      count++;
      return x ** power;
    };
    integrate(curve, -1, 1, 1e-13);
    return count;
  };
  expect(calls(12)).toBe(15);
  expect(calls(14)).toBeGreaterThan(15);
});

test("a curve that almost has a pole is integrated to nine digits", () => {
  expect(integrate((x) => 1 / (1.000001 - x), 0, 1)).toBeCloseTo(Math.log(1000001), 8);
});

test("an integral against the direction is the negative, and over nothing is nothing", () => {
  expect(integrate(Math.cos, 1, 0)).toBeCloseTo(-Math.sin(1), 13);
  expect(integrate(Math.cos, 1, 1)).toBe(0);
});
