import { expect, test } from "vitest";
import { heatState } from "../../src/core/bath/heat/working/heat-state.js";
import { hold } from "../../src/core/bath/heat/working/hold.js";
import { fallTo, riseTo } from "../../src/core/bath/heat/working/rise-and-fall.js";
import { exponentialTank } from "../core/bath/heat/working/tanks.js";

// source: collegeAlgebra. Temperatures in °F. The working bath itself cools, in a tank that loses heat by its walls
// alone: the first reading sets the wall.
const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;
const near = (actual: number, exact: number): void => expect(Math.abs(actual / exact - 1)).toBeLessThan(1e-5);
const tankOf = (start: number, room: number, reading: number, at: number) => ({
  heat: exponentialTank(Math.log((start - room) / (reading - room)) / at, celsius(room), 100),
  state: heatState(celsius(start), 1),
});

test("a cheesecake of 165 °F, 150 °F after 10 min at 35 °F, has 70 °F after 107 min (106.68 with the page's rounded k)", () => {
  const { heat, state } = tankOf(165, 35, 150, 10);
  const minutes = fallTo(heat, state, celsius(70))!;
  expect(Math.round(minutes)).toBe(107);
  near(minutes, 107.028);
});

test("a pitcher of 40 °F, 45 °F after 1 h at 70 °F, has 60 °F after 6.026 h", () => {
  const { heat, state } = tankOf(40, 70, 45, 1);
  const hours = riseTo(heat, state, celsius(60))!;
  expect(hours).toBeCloseTo(6.026, 3);
  near(hours, 6.02569);
});

test("soup of 100 °F, 95 °F after 15 min at 69 °F, has 80 °F after 88 min and 74.34 °F after 150", () => {
  const { heat, state } = tankOf(100, 69, 95, 15);
  const minutes = fallTo(heat, state, celsius(80))!;
  expect(Math.round(minutes)).toBe(88);
  near(minutes, 88.3582);
  hold(heat, heat.cooling, state, 150 - minutes);
  near(1.8 * state.celsius + 32, 74.3392);
});
