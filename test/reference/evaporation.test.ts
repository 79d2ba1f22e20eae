import { expect, test } from "vitest";
import { evaporationFluxKgM2H } from "../../src/core/bath/heat/evaporation.js";
import { latentHeatKjPerKg } from "../../src/core/bath/water.js";

// source: shah2014, evaluated with the vapour pressure and latent heat of the water table; air at 20 °C, 50 %
const table: readonly (readonly [celsius: number, kgM2H: number, wPerM2: number])[] = [
  [40, 0.8, 535],
  [50, 1.629, 1078],
  [60, 3.016, 1975],
  [70, 5.251, 3403],
  [80, 8.741, 5604],
  [90, 14.033, 8898],
];
const room = { celsius: 20, humidity: 0.5 };

test.each(table)(
  "water at %d °C evaporates as evaluated elsewhere, to 0.06 %, which is what the vapour pressures differ by",
  (celsius, kgM2H) => {
    expect(Math.abs(evaporationFluxKgM2H(celsius, room) / kgM2H - 1)).toBeLessThan(0.0006);
  },
);

test.each(table)(
  "water at %d °C gives off the heat evaluated elsewhere, to 0.21 %, which is what the latent heats differ by",
  (celsius, _kgM2H, wPerM2) => {
    const watts = (evaporationFluxKgM2H(celsius, room) * latentHeatKjPerKg(celsius)) / 3.6;
    expect(Math.abs(watts / wPerM2 - 1)).toBeLessThan(0.0021);
  },
);

test("an uncovered bath at 80 °C loses a figure near the 6 to 9 kg/(m² h) of common practice, no source", () => {
  expect(evaporationFluxKgM2H(80, room)).toBeGreaterThan(6);
  expect(evaporationFluxKgM2H(80, room)).toBeLessThan(9);
});
