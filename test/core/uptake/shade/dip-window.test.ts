import { expect, test } from "vitest";
import { rateFactor } from "../../../../src/core/uptake/law/arrhenius.js";
import { dipTimer } from "../../../../src/core/uptake/law/dip-time.js";
import type { UptakeModel } from "../../../../src/core/uptake/law/uptake-model.js";
import { dipSlope, dipWindow } from "../../../../src/core/uptake/shade/dip-window.js";

const model: UptakeModel = {
  law: "second-order",
  ratePerSecond: 0.01,
  referenceSeconds: 100,
  referenceCelsius: 80,
  activationEnergyJPerMol: 75000,
};
const aim = { freshSeconds: 200 / 3, freshWindow: [50, 150] as const, slopePerFreshSecond: 0.3 };
const timer = dipTimer(model, 80);

test("dipWindow gives the times of the window's ends in the bath, and no far end where there is none", () => {
  expect(dipWindow(timer, aim, 1)).toEqual([50, 150]);
  // x = 0.5: g = 1/3, g/a = 2/3, x(s) = 2: four times as long, and no more for a deeper dip.
  const [from, to] = dipWindow(timer, aim, 0.5)!;
  expect(from).toBeCloseTo(200, 9);
  expect(to).toBeCloseTo(600, 9);
  expect(dipWindow(timer, { freshWindow: [50, null] }, 0.5)![1]).toBeNull();
  expect(dipWindow(timer, { freshWindow: null }, 1)).toBeNull();
});

test("dipSlope is that of a fresh bath, by as much slower as a cooler or weaker bath is", () => {
  expect(dipSlope(timer, aim, 1)).toBeCloseTo(0.3, 12);
  const cooler = dipTimer(model, 70);
  expect(dipSlope(cooler, aim, 1)).toBeCloseTo(0.3 * rateFactor({ ...model, celsius: 70 }), 9);
  // x = 2/3: g = 0.4, x(s) = u/(1 - u) with u = g/s, and du/dx = (1 - u)^2 / ... of a fresh second: (1 - g)^2 against s (1 - u)^2.
  const u = 0.4 / 0.9;
  const slowed = (0.9 * (1 - u) ** 2) / 0.6 ** 2;
  expect(dipSlope(timer, aim, 0.9)! / (0.3 * slowed)).toBeCloseTo(1, 3);
  expect(dipSlope(timer, { ...aim, freshSeconds: 0 }, 1)).toBeNull();
  expect(dipSlope(timer, { ...aim, slopePerFreshSecond: null }, 1)).toBeNull();
});
