import { expect, test } from "vitest";
import { lastFactor } from "../../../../src/core/quality/estimates/last-readings.js";

const readings = (apart: number, shades: readonly string[]) =>
  shades.map((shade) => ({ apart, deviation: 0.05, shade, swatchDeviation: 0.03 }));
const factor = (apart: number, ...shades: string[]) => lastFactor(readings(apart, shades))!.factor;

test("the last readings count from three on, and only those", () => {
  expect(lastFactor(readings(0.2, ["red", "red"]))).toBeUndefined();
  expect(lastFactor([...readings(-9, ["red"]), ...readings(0.2, ["red", "blue", "red"])])!.raw).toBeCloseTo(
    Math.exp(0.2),
    12,
  );
});

test("they change times only beyond 1.96 standard errors of their mean", () => {
  // Of three shades each swatch has its own noise: 1.96 sqrt(3 (0.05² + 0.03²))/3 = 0.0660.
  expect(factor(0.065, "red", "blue", "green")).toBe(1);
  expect(factor(0.067, "red", "blue", "green")).toBeGreaterThan(1.03);
  expect(factor(-0.067, "red", "blue", "green")).toBeLessThan(0.97);
});

test("readings of one shade share the noise of its swatches, so that they show less of the bath", () => {
  // 1.96 sqrt(3 0.05² + (3 0.03)²)/3 = 0.0816.
  expect(factor(0.081, "red", "red", "red")).toBe(1);
  expect(factor(0.082, "red", "red", "red")).toBeGreaterThan(1.04);
  expect(factor(0.1, "red", "red", "red")).toBeLessThan(factor(0.1, "red", "blue", "green"));
});
