import { expect, test } from "vitest";
import { surfaceLossWPerM2 } from "../../src/core/bath/heat/evaporation.js";
import { tankLossW, wallLossW } from "../../src/core/bath/heat/heat-loss.js";

// source: openTankHeatLoss, in Btu/(ft² h): evaporation, radiation, surface, bare wall, wall under 1 in of insulation
const table: readonly (readonly [
  fahrenheit: number,
  evaporation: number,
  radiation: number,
  surface: number,
  bareWall: number,
  insulatedWall: number,
])[] = [
  [90, 80, 50, 130, 50, 12],
  [100, 160, 70, 230, 70, 15],
  [110, 240, 90, 330, 90, 19],
  [120, 360, 110, 470, 110, 23],
  [130, 480, 135, 615, 135, 27],
  [140, 660, 160, 820, 160, 31],
  [150, 860, 180, 1040, 180, 34],
  [160, 1100, 210, 1310, 210, 38],
  [170, 1380, 235, 1615, 235, 42],
  [180, 1740, 260, 2000, 260, 46],
  [190, 2160, 290, 2450, 290, 50],
  [200, 2680, 320, 3000, 320, 53],
  [210, 3240, 360, 3600, 360, 57],
];
const W_PER_M2 = 3.154591;
const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;
/** The table does not give the humidity; half is our default. */
const room = { celsius: celsius(60), humidity: 0.5 };
const off = (value: number, printed: number): number => value / (printed * W_PER_M2) - 1;
const wall = (fahrenheit: number, insulation: "none" | "foam"): number =>
  wallLossW({ wallAreaDm2: 100, insulation }, celsius(fahrenheit), room);

test.each(table.filter(([f]) => f <= 200))(
  "at %d °F the loss through the surface is the handbook's to 25 %",
  (f, evaporation, radiation, surface) => {
    expect(evaporation + radiation).toBeCloseTo(surface, 6);
    expect(Math.abs(off(surfaceLossWPerM2(celsius(f), room), surface))).toBeLessThan(0.25);
  },
);

test.each(table.filter(([f]) => f >= 120 && f <= 160))(
  "at %d °F, 49 to 71 °C, the loss through the surface is the handbook's to 6 %",
  (f, _evaporation, _radiation, surface) => {
    expect(Math.abs(off(surfaceLossWPerM2(celsius(f), room), surface))).toBeLessThan(0.06);
  },
);

// 98.9 °C lies beyond the 94 °C of the measurements behind the correlation. It drives the air by the density of
// dry air alone, which vanishes at boiling, while the vapour that takes its place has weight too.
test("at 210 °F, past the range of the evaporation law, the loss through the surface is 26 % above the handbook's", () => {
  expect(off(surfaceLossWPerM2(celsius(210), room), 3600)).toBeCloseTo(0.259, 3);
});

test.each(table.filter(([f]) => f >= 100))(
  "at %d °F the loss through a bare wall is the handbook's to 21 %",
  (f, _evaporation, _radiation, _surface, bareWall) => {
    expect(Math.abs(off(wall(f, "none"), bareWall))).toBeLessThan(0.21);
  },
);

// Natural convection and radiation carry less per kelvin at small differences: the table's own U falls to 9.5 here.
test("at 90 °F the loss through a bare wall is 27 % above the handbook's, since U is taken as constant", () => {
  expect(off(wall(90, "none"), 50)).toBeCloseTo(0.268, 3);
});

test.each(table)(
  "at %d °F the loss through a foamed wall is the handbook's for one inch of insulation to 5 %",
  (f, _evaporation, _radiation, _surface, _bareWall, insulatedWall) => {
    expect(Math.abs(off(wall(f, "foam"), insulatedWall))).toBeLessThan(0.05);
  },
);

test("an open tank at 150 °F with 10 ft² of surface and 50 ft² of bare wall loses the published 19400 Btu/h to 5 %", () => {
  // source: openTankHeatLoss, worked example
  const ft2 = 9.290304;
  const tank = {
    surfaceCm2: 10 * ft2 * 100,
    wallAreaDm2: 50 * ft2,
    insulation: "none",
    cover: "none",
  } as const;
  const loss = tankLossW(tank, celsius(150), room, "heating");
  expect(Math.abs(loss / 5686 - 1)).toBeLessThan(0.05);
});
