import { expect, test } from "vitest";
import { controlChart } from "../../src/core/quality/control-chart.js";
import { ewma, ewmaHalfWidth } from "../../src/core/quality/ewma.js";
import { individualsLimits } from "../../src/core/quality/individuals-limits.js";

// source: nistHandbook section 6.3.2.2, flow rate (data from memory, limits confirmed in public test lists)
const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
// source: nistHandbook section 6.3.2.4, target 50, σ 2.0539, λ 0.3; the page cuts its limits off at four decimals
const ewmaData = [52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, ...flow];
const averages = [
  50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38,
  49.92, 50.73, 51.23, 51.94, 51.99,
];

test("individualsLimits gives the handbook's limits for the flow rate, which is in control", () => {
  const { centre, sigma, lower, upper } = individualsLimits(flow)!;
  expect(centre).toBeCloseTo(50.81, 10);
  expect(sigma * 1.128).toBeCloseTo(1.8778, 4);
  expect(upper).toBeCloseTo(55.8041, 4);
  expect(lower).toBeCloseTo(45.8159, 4);
  expect(controlChart(flow)!.points.filter(({ signals }) => signals.includes("reading"))).toEqual([]);
});

test("ewma gives the handbook's averages to the printed digits, and the limits that they keep to", () => {
  const found = ewma(ewmaData, 50, 0.3);
  found.forEach((value, i) => {
    expect(Math.abs(value - averages[i]!)).toBeLessThanOrEqual(0.005 + 1e-9);
  });
  const half = ewmaHalfWidth(2.0539, Number.POSITIVE_INFINITY, { lambda: 0.3, width: 3 });
  expect(Math.trunc((50 + half) * 1e4) / 1e4).toBe(52.5884);
  expect(Math.trunc((50 - half) * 1e4) / 1e4).toBe(47.4115);
  expect(found.every((value) => Math.abs(value - 50) < half)).toBe(true);
});
