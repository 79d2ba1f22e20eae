import { expect, test } from "vitest";
import { mixedCelsius } from "../../src/core/bath/heat/mixing-temperature.js";
import { findRoot } from "../../src/core/maths/root.js";

// source: chemistry2eCalorimetry, water at 1 g/mL and 4.184 J/(g K)
const WATER = 4.184;
const near = (actual: number, exact: number): void => expect(Math.abs(actual / exact - 1)).toBeLessThan(1e-5);

test("copper of 314 °C brings 390 mL of water from 22.6 to 38.7 °C", () => {
  const celsius = mixedCelsius({ jPerK: 248 * 0.385, celsius: 314 }, { jPerK: 390 * WATER, celsius: 22.6 });
  expect(celsius).toBeCloseTo(38.7, 1);
  near(celsius, 38.7083);
});

test("copper that brings 390 mL of water from 22.6 to 39.9 °C had 335.6 °C", () => {
  const tooWarm = (copper: number): number =>
    mixedCelsius({ jPerK: 248 * 0.385, celsius: copper }, { jPerK: 390 * WATER, celsius: 22.6 }) - 39.9;
  const start = findRoot(tooWarm, { low: 40, high: 1000 })!;
  expect(start).toBeCloseTo(335.6, 1);
  near(start, 335.558);
});

test("59.7 g of a metal of 100 °C that bring 60 mL of water from 22 to 28.5 °C have 0.38 J/(g K)", () => {
  const tooWarm = (jPerGK: number): number =>
    mixedCelsius({ jPerK: 59.7 * jPerGK, celsius: 100 }, { jPerK: 60 * WATER, celsius: 22 }) - 28.5;
  const specific = findRoot(tooWarm, { low: 0.01, high: 5 })!;
  expect(specific).toBeCloseTo(0.38, 2);
  near(specific, 0.382275);
});

test("a spoon of 45 g takes 1 K out of 180 g at 95 °C", () => {
  const drop = 95 - mixedCelsius({ jPerK: 180 * WATER, celsius: 95 }, { jPerK: 45 * 0.24, celsius: 25 });
  expect(drop).toBeCloseTo(1, 1);
  near(drop, 0.989632);
});

test("170.27 mL of water at 23 °C bring 180 mL from 95 to 60 °C (the page prints no answer; ours)", () => {
  const tooWarm = (coldMl: number): number =>
    mixedCelsius({ jPerK: 180, celsius: 95 }, { jPerK: coldMl, celsius: 23 }) - 60;
  expect(findRoot(tooWarm, { low: 0, high: 1000 })).toBeCloseTo(170.27, 2);
});
