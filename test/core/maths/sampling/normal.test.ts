import { median, quantileSorted } from "d3-array";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { exactSum } from "../../../../src/core/maths/exact-sum.js";
import { halfWidth95 } from "../../../../src/core/maths/sampling/half-width-95.js";
import { latinHypercube } from "../../../../src/core/maths/sampling/latin-hypercube.js";
import { normalCdf } from "../../../../src/core/maths/sampling/normal-cdf.js";
import { normalQuantile } from "../../../../src/core/maths/sampling/normal-quantile.js";
import { truncatedNormalQuantile } from "../../../../src/core/maths/sampling/truncated-normal.js";

/** Share of the normal distribution below z from its density alone, by Simpson's rule. */
function sharesBelow(z: number): number {
  const steps = 40_000;
  const from = z - 9;
  const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  const width = (z - from) / steps;
  return (
    (width / 3) *
    exactSum(
      Array.from(
        { length: steps + 1 },
        (_, i) => density(from + i * width) * (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2),
      ),
    )
  );
}

/** Relative difference of the share below z to p, seen from the nearer tail. */
const residual = (p: number): number => Math.abs(sharesBelow(normalQuantile(p)) - p) / p;

describe("normalQuantile", () => {
  // Shares that reach into all three of the approximations' ranges.
  test.each([0.4999, 0.3, 0.1, 0.075, 0.0749, 0.02, 1e-3, 1e-6, 1e-10, 1.4e-11, 1.3e-11, 1e-15, 1e-20])(
    "is where the integral of the density is %d",
    (p) => {
      expect(residual(p)).toBeLessThan(1e-12);
    },
  );

  test("is infinite at the ends and zero in the middle", () => {
    expect([0, 0.5, 1].map(normalQuantile)).toEqual([Number.NEGATIVE_INFINITY, 0, Number.POSITIVE_INFINITY]);
  });

  test("mirrors about the middle and rises", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 2 ** 20 - 1 }),
        fc.integer({ min: 1, max: 2 ** 20 - 1 }),
        (a, b) => {
          const [p, q] = [a / 2 ** 20, b / 2 ** 20];
          expect(normalQuantile(p) + normalQuantile(1 - p)).toBeCloseTo(0, 12);
          if (p < q) expect(normalQuantile(p)).toBeLessThan(normalQuantile(q));
        },
      ),
    );
  });
});

describe("normalCdf", () => {
  test("undoes normalQuantile", () => {
    for (let p = 0.001; p < 1; p += 0.001) expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 14);
  });

  test("is 0 and 1 far out", () => {
    expect([-40, -9.1, 9.1, 40].map(normalCdf)).toEqual([0, 0, 1, 1]);
    expect(normalCdf(-8.9)).toBeCloseTo(0, 15);
    expect(normalCdf(8.9)).toBeCloseTo(1, 14);
  });
});

const draw = (distribution: Parameters<typeof truncatedNormalQuantile>[0], seed: number): number[] =>
  latinHypercube(1000, 1, seed)[0]!.map((u) => truncatedNormalQuantile(distribution, u));
const mean = (values: readonly number[]): number => exactSum(values) / values.length;
const within1Percent = (actual: number, expected: number): void =>
  expect(Math.abs(actual / expected - 1)).toBeLessThan(0.01);

describe("1000 draws of a Latin hypercube", () => {
  test.each([1, 2, 3])(
    "have the mean, deviation and quantiles of a normal distribution within 1 %%, seed %d",
    (seed) => {
      const values = draw({ value: 100, halfWidth: 20 * halfWidth95 }, seed);
      const sorted = values.toSorted((a, b) => a - b);
      within1Percent(mean(values), 100);
      within1Percent(Math.sqrt(mean(values.map((x) => (x - 100) ** 2))), 20);
      within1Percent(quantileSorted(sorted, 0.1)!, 100 - 20 * 1.2815515655446004);
      within1Percent(quantileSorted(sorted, 0.5)!, 100);
      within1Percent(quantileSorted(sorted, 0.9)!, 100 + 20 * 1.2815515655446004);
    },
  );

  test.each([1, 2, 3])(
    "have the mean and quantiles of a uniform distribution within 1 %%, seed %d",
    (seed) => {
      const sorted = latinHypercube(1000, 1, seed)[0]!.toSorted((a, b) => a - b);
      within1Percent(mean(sorted), 0.5);
      for (const p of [0.1, 0.25, 0.5, 0.9]) within1Percent(quantileSorted(sorted, p)!, p);
    },
  );

  test.each([1, 2, 3])("have the mean of an exponential distribution within 1 %%, seed %d", (seed) => {
    const values = latinHypercube(1000, 1, seed)[0]!.map((u) => -Math.log(1 - u));
    within1Percent(mean(values), 1);
    within1Percent(median(values)!, Math.LN2);
  });

  // The mean of a normal distribution cut at zero: m + s φ(m/s)/Φ(m/s).
  test.each([1, 2, 3])("have the mean of a normal distribution cut at zero within 1 %%, seed %d", (seed) => {
    const values = draw({ value: 0.03, halfWidth: 0.03 }, seed);
    const deviation = 0.03 / 1.959963984540054;
    const z = 1.959963984540054;
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    within1Percent(mean(values), 0.03 + (deviation * density) / 0.975);
    expect(values.every((value) => value > 0)).toBe(true);
  });
});

describe("truncatedNormalQuantile", () => {
  test("stays within its limits and never piles up at one of them", () => {
    const values = draw({ value: 0.97, halfWidth: 0.05, most: 1 }, 5);
    expect(Math.max(...values)).toBeLessThan(1);
    expect(new Set(values).size).toBe(1000);
  });

  test("is the limit where the middle lies far outside, and the value where nothing is uncertain", () => {
    expect(truncatedNormalQuantile({ value: -5, halfWidth: 0.1 }, 0.5)).toBe(0);
    expect(truncatedNormalQuantile({ value: 5, halfWidth: 0.1, most: 1 }, 0.5)).toBe(1);
    expect(truncatedNormalQuantile({ value: 5, halfWidth: 0 }, 0.99)).toBe(5);
    expect(truncatedNormalQuantile({ value: 0, halfWidth: 0 }, 0.01)).toBe(0);
  });

  test("lets a value below zero be where the least is below zero", () => {
    expect(truncatedNormalQuantile({ value: -5, halfWidth: 1, least: -273.15 }, 0.5)).toBeCloseTo(-5, 12);
  });
});
