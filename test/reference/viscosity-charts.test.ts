import { expect, test } from "vitest";
import { controlChart } from "../../src/core/quality/control-chart.js";

// source: montgomery1991 viscosity of 15 batches of paint; averages and widths recomputed from the data
const viscosity = [
  33.75, 33.05, 34.0, 33.81, 33.46, 34.02, 33.68, 33.27, 33.49, 33.2, 33.62, 33.0, 33.54, 33.12, 33.84,
];
const averages = [
  33.5687, 33.4649, 33.5719, 33.6196, 33.5876, 33.6741, 33.6753, 33.5942, 33.5734, 33.4987, 33.523, 33.4184,
  33.4427, 33.3782, 33.4705,
];
const halfWidths = [
  0.230129, 0.294709, 0.329463, 0.349898, 0.362372, 0.370135, 0.375019, 0.378112, 0.380078, 0.381331,
  0.382131, 0.382642, 0.382969, 0.383178, 0.383311,
];

test("controlChart gives the printed limits of the viscosity, and the averages with their limits", () => {
  const { limits, points, runs } = controlChart(viscosity, { setting: { lambda: 0.2, width: 2.7 } })!;
  const { centre, lower, upper, readings } = limits;
  for (const [found, printed] of [
    [centre, 33.52],
    [upper, 34.8],
    [lower, 32.24],
  ] as const)
    expect(Math.abs(found - printed)).toBeLessThanOrEqual(0.01);
  expect(readings).toBe(15);
  points.forEach(({ ewma, ewmaLimits: [low, high] }, i) => {
    expect(ewma / averages[i]! - 1).toBeCloseTo(0, 5);
    expect((high - centre) / halfWidths[i]! - 1).toBeCloseTo(0, 5);
    expect(high + low!).toBeCloseTo(2 * centre, 10);
  });
  expect(runs).toEqual([]);
});
