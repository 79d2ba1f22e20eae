import { expect, test } from "vitest";
import { solveLeastSquares } from "../../src/core/maths/least-squares/linear-least-squares.js";
import { type EwmaSetting, ewma, ewmaHalfWidth, usualEwma } from "../../src/core/quality/ewma.js";

const shifts = [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3, 3.5, 4, 5];
// source: lucasSaccucci1990 Table 3, λ 0.5, L 3.071, from the centre on: mean number of readings until an alarm
const printed = [500, 255, 88.8, 35.9, 17.5, 6.53, 3.63, 2.5, 1.93, 1.58, 1.34, 1.07];

/** Abscissas and weights of Gauss and Legendre on -1..1. */
function gaussLegendre(n: number): readonly (readonly [x: number, weight: number])[] {
  return Array.from({ length: n }, (_unused, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 0;
    for (let step = 0; step < 20; step++) {
      let [before, now] = [1, x];
      for (let k = 2; k <= n; k++) [before, now] = [now, ((2 * k - 1) * x * now - (k - 1) * before) / k];
      slope = (n * (x * now - before)) / (x * x - 1);
      x -= now / slope;
    }
    return [x, 2 / ((1 - x * x) * slope * slope)] as const;
  });
}

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/**
 * Mean number of readings until the average leaves its limits, by the integral equation of the average:
 * L(u) = 1 + ∫ L(z) f(z | u) dz over the limits. The limits and the step of the average are those of the chart.
 */
function runLength(setting: EwmaSetting, shift: number): number {
  const half = ewmaHalfWidth(1, Number.POSITIVE_INFINITY, setting);
  const nodes = gaussLegendre(48).map(([x, weight]) => [x * half, weight * half] as const);
  /** How densely the next average lies at z: the reading that leads there, found from the step of the average itself. */
  const step = (from: number, z: number): number => {
    const [without, withOne] = [0, 1].map((reading) => ewma([reading], from, setting.lambda)[0]!);
    const gain = withOne! - without!;
    return density((z - without!) / gain - shift) / gain;
  };
  const matrix = nodes.map(([u], i) =>
    nodes.map(([z, weight], j) => (i === j ? 1 : 0) - weight * step(u, z)),
  );
  const lengths = solveLeastSquares(
    matrix,
    nodes.map(() => 1),
  )!.x;
  return 1 + nodes.reduce((sum, [z, weight], i) => sum + weight * lengths[i]! * step(0, z), 0);
}

test("averages with their limits give the printed mean number of readings until an alarm", () => {
  shifts.forEach((shift, i) => {
    expect(Math.abs(runLength({ lambda: 0.5, width: 3.071 }, shift) / printed[i]! - 1)).toBeLessThanOrEqual(
      0.005,
    );
  });
});

test("the usual setting gives as many false alarms as 3 σ of single readings, and sees 1 σ after ten readings", () => {
  expect(Math.abs(runLength(usualEwma, 0) - 370.4)).toBeLessThan(2);
  expect(runLength(usualEwma, 1)).toBeCloseTo(10, 0);
});
