import { expect, test } from "vitest";
import { counterFlowRatio, counterFlowWater } from "../../src/core/bath/rinse/counter-flow.js";
import { looseLeft, rinseWater } from "../../src/core/bath/rinse/rinse.js";
import { rinseLoads } from "../../src/core/bath/rinse/rinse-loads.js";

// source: counterflowNote, 100 panels of 6 ft² an hour, 20 mL/ft², from a bath of 250 g/L
const dragOutLPerH = (100 * 6 * 20) / 1000;
const relative = (actual: number, exact: number): number => Math.abs(actual / exact - 1);

test("the panels drag out 12 L with 3000 g an hour, 50 g/min, 215.278 mL/m²", () => {
  expect(dragOutLPerH).toBe(12);
  const hour = rinseLoads([{ dragOutL: dragOutLPerH, dyePerL: 250, takenUp: 0 }], {
    rinses: 0,
    waterL: 1,
    every: 1,
  });
  expect(hour.dyeOnParts).toBeCloseTo(3000, 8);
  expect(relative(20 / 0.3048 ** 2, 215.278)).toBeLessThan(1e-6);
});

test.each([
  [50, 1000],
  [100, 500],
  [200, 250],
])("one running rinse of %d mg/L takes %d L/min, the 0.2 L/min dragged in among them", (mgPerL, litres) => {
  const dragIn = dragOutLPerH / 60;
  expect(rinseWater(250_000 / mgPerL, dragIn) + dragIn).toBeCloseTo(litres, 9);
});

test.each([
  [2, 9.8985, 10.1],
  [3, 2.64421, 2.78108],
])(
  "%d rinses in counter-flow take %d L/min for 100 mg/L, the note's own formula %d, its graph is wrong",
  (rinses, exact, trade) => {
    const litres = counterFlowWater(2500, { dragOut: 0.2, rinses })!;
    expect(relative(litres, exact)).toBeLessThan(1e-5);
    expect(relative(0.2 * (2500 ** (1 / rinses) + 1 / rinses), trade)).toBeLessThan(1e-5);
    expect(trade / litres).toBeGreaterThan(1.01);
    expect(trade / litres).toBeLessThan(1.06);
  },
);

// Computed, no source. Water per drag-out, rinses, ratio in counter-flow, (W/D)ⁿ, ratio of rinses fed separately.
test.each([
  [2, 1, 3, 2, 3],
  [2, 2, 7, 4, 9],
  [2, 3, 15, 8, 27],
  [2, 4, 31, 16, 81],
  [5, 1, 6, 5, 6],
  [5, 2, 31, 25, 36],
  [5, 3, 156, 125, 216],
  [5, 4, 781, 625, 1296],
  [10, 1, 11, 10, 11],
  [10, 2, 111, 100, 121],
  [10, 3, 1111, 1000, 1331],
  [10, 4, 11_111, 10_000, 14_641],
  [20, 1, 21, 20, 21],
  [20, 2, 421, 400, 441],
  [20, 3, 8421, 8000, 9261],
  [20, 4, 168_421, 160_000, 194_481],
  [50, 1, 51, 50, 51],
  [50, 2, 2551, 2500, 2601],
  [50, 3, 127_551, 125_000, 132_651],
  [50, 4, 6_377_551, 6_250_000, 6_765_201],
  [100, 1, 101, 100, 101],
  [100, 2, 10_101, 10_000, 10_201],
  [100, 3, 1_010_101, 1_000_000, 1_030_301],
  [100, 4, 101_010_101, 100_000_000, 104_060_401],
])(
  "of %d times the drag-out, %d rinses thin %d-fold in counter-flow, about %d, and %d-fold each with its own water",
  (water, rinses, counterFlow, about, separate) => {
    expect(counterFlowRatio(water, rinses)).toBe(counterFlow);
    expect(water ** rinses).toBe(about);
    expect(relative(1 / looseLeft(1, water, rinses), separate)).toBeLessThan(1e-12);
    expect((water - 1) / (water ** (rinses + 1) - 1)).toBeCloseTo(1 / counterFlow, 15);
  },
);
