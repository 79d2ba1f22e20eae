import { expect, test } from "vitest";
import { bathHeat } from "../../../../../src/core/bath/heat/working/bath-heat.js";
import {
  heatState,
  immerseParts,
  liftParts,
  pourTopUp,
} from "../../../../../src/core/bath/heat/working/heat-state.js";
import { room, six } from "./tanks.js";

const heat = bathHeat(six, 80, room);

test("35 parts of 8 g at 1.7 kJ/(kg K) take 6 L from 80 to 78.85 °C, and give nothing back when they come out", () => {
  const state = heatState(80, 6);
  immerseParts(heat, state, { jPerK: 35 * 8 * 1.7, celsius: 20 });
  expect(state.celsius).toBeCloseTo(78.852, 3);
  expect(state.partsKwh).toBeCloseTo((476 * (state.celsius - 20)) / 3.6e6, 12);
  expect(state.bathKwh).toBeCloseTo(-state.partsKwh, 12);
  liftParts(state);
  expect(state).toMatchObject({ celsius: expect.closeTo(78.852, 3), partsJPerK: 0 });
});

test("parts without heat capacity leave the temperature as it is, to the last digit", () => {
  const state = heatState(77.7, 6.1);
  immerseParts(heat, state, { jPerK: 0, celsius: 20 });
  expect(state.celsius).toBe(77.7);
});

test("a top-up of 0.44 L at 20 °C costs 6 L at 80 °C 4.4 °C", () => {
  const state = heatState(80, 5.56);
  pourTopUp(heat, state, { volumeL: 0.44, celsius: 20 });
  expect(state.celsius).toBeCloseTo(75.6, 12);
  expect(state.volumeL).toBeCloseTo(6, 12);
  expect(state.topUpKwh).toBeCloseTo((0.44 * heat.jPerLK * (75.6 - 20)) / 3.6e6, 12);
  expect(state.bathKwh).toBeCloseTo(-state.topUpKwh, 12);
});

test("a top-up as warm as the bath changes nothing but its volume", () => {
  const state = heatState(80, 5.56);
  pourTopUp(heat, state, { volumeL: 0.44, celsius: 80 });
  expect(state).toEqual({ ...heatState(80, 5.56), volumeL: expect.closeTo(6, 12) });
});
