import { expect, test } from "vitest";
import { sensibleHeatKj } from "../../src/core/bath/heat/heating.js";
import { waterDensityKgM3 } from "../../src/core/bath/water.js";

test("a quarter litre of water in a half-kilogram aluminium pan takes 62.8 and 27.0 kJ from 20 to 80 °C, 30.1 % in the pan", () => {
  // source: openStaxPhysics, example 14.1
  const water = sensibleHeatKj(0.25, 60);
  const pan = sensibleHeatKj(0.5, 60, 0.9);
  expect(water).toBeCloseTo(62.8, 1);
  expect(pan).toBeCloseTo(27.0, 9);
  expect(water + pan).toBeCloseTo(89.8, 1);
  expect((100 * pan) / (water + pan)).toBeCloseTo(30.1, 1);
});

test("six and thirty litres from 15 to 80 °C take 0.4532 and 2.2659 kWh at a mean specific heat of 4.187", () => {
  // computed, no source
  const six = sensibleHeatKj((6 * waterDensityKgM3(15)) / 1000, 65, 4.187);
  const thirty = sensibleHeatKj((30 * waterDensityKgM3(15)) / 1000, 65, 4.187);
  expect(six).toBeCloseTo(1631.5, 1);
  expect(six / 3600).toBeCloseTo(0.4532, 4);
  expect(thirty / 3600).toBeCloseTo(2.2659, 4);
});
