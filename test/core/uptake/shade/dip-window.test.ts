import { expect, test } from "vitest";
import { rateFactor } from "../../../../src/core/uptake/law/arrhenius.js";
import { dipTimer, type UptakeModel } from "../../../../src/core/uptake/law/depth.js";
import type { ShadeAim } from "../../../../src/core/uptake/shade/aim.js";
import { dipSlope, dipWindow } from "../../../../src/core/uptake/shade/dip-window.js";

const model: UptakeModel = {
  law: "second-order",
  ratePerSecond: 0.01,
  referenceSeconds: 100,
  referenceCelsius: 80,
  activationEnergyJPerMol: 75000,
};
const aim: ShadeAim = {
  depth: 0.8,
  freshSeconds: 200 / 3,
  lab: [50, 0, 0],
  deltaE00: 0,
  window: { from: 0.7, to: 1.2 },
  slopePerFreshSecond: 0.3,
  reachable: true,
  extrapolated: false,
  estimated: false,
};
const timer = dipTimer(model, 80);

test("dipWindow gives the times of the window's ends, without the one that the bath never reaches", () => {
  const [from, to] = dipWindow(timer, aim, 1)!;
  expect(from).toBeCloseTo(0.35 / 0.65 / 0.01, 9);
  expect(to).toBeCloseTo(0.6 / 0.4 / 0.01, 9);
  expect(dipWindow(timer, aim, 0.5)![1]).toBeNull();
  expect(dipWindow(timer, aim, 0.3)).toBeNull();
  expect(dipWindow(timer, { ...aim, window: null }, 1)).toBeNull();
});

test("dipSlope is that of a fresh bath, by as much slower as a cooler or weaker bath is, however fresh", () => {
  expect(dipSlope(model, timer, aim, 1)).toBeCloseTo(0.3, 12);
  const cooler = dipTimer(model, 70);
  expect(dipSlope(model, cooler, aim, 1)).toBeCloseTo(0.3 * rateFactor({ ...model, celsius: 70 }), 9);
  // t = u/(1 - u)/k, u = D/2/s: dD/dt = 2 s k (1 - u)^2.
  const slowed = (0.7 * (1 - 0.4 / 0.7) ** 2) / 0.6 ** 2;
  expect(dipSlope(model, timer, aim, 0.7)! / (0.3 * slowed)).toBeCloseTo(1, 3);
  expect(dipSlope(model, timer, { ...aim, depth: 0 }, 1)).toBeNull();
  expect(dipSlope(model, timer, aim, 0.3)).toBeNull();
});
