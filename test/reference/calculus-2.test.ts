import { expect, test } from "vitest";
import { heatState } from "../../src/core/bath/heat/working/heat-state.js";
import { hold } from "../../src/core/bath/heat/working/hold.js";
import { fallTo, riseTo } from "../../src/core/bath/heat/working/rise-and-fall.js";
import { flushed } from "../../src/core/bath/rinse/wash-out.js";
import { exponentialTank } from "../core/bath/heat/working/tanks.js";

// source: calculus2. The working bath itself cools, in a tank that loses heat by its walls alone: the first reading
// sets the wall, the rest follows. Temperatures in °F.
const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;
const fahrenheit = (of: number): number => 1.8 * of + 32;

/** A body of a start and a room, with a reading at a time. */
interface Body {
  readonly start: number;
  readonly room: number;
  readonly reading: number;
  readonly at: number;
}

const rateOf = ({ start, room, reading, at }: Body): number =>
  Math.log((start - room) / (reading - room)) / at;

/** Time from the start to a temperature, in the unit of the reading's. */
function timeTo(body: Body, target: number): number {
  const heat = exponentialTank(rateOf(body), celsius(body.room), 100);
  const state = heatState(celsius(body.start), 1);
  return (target < body.start ? fallTo : riseTo)(heat, state, celsius(target))!;
}

function readingAt(body: Body, time: number): number {
  const heat = exponentialTank(rateOf(body), celsius(body.room), 100);
  const state = heatState(celsius(body.start), 1);
  hold(heat, heat.cooling, state, time);
  return fahrenheit(state.celsius);
}

const near = (actual: number, exact: number): void => expect(Math.abs(actual / exact - 1)).toBeLessThan(1e-5);

const coffee = { start: 200, room: 75, reading: 185, at: 2 };

test("coffee from 200 °F has 185 °F after 2 min at 75 °F, 175 °F after 3.5 and 155 °F after 7", () => {
  near(readingAt(coffee, 2), 185);
  near(timeTo(coffee, 175), 3.49116);
  near(timeTo(coffee, 155), 6.98233);
  expect(Math.round(2 * timeTo(coffee, 175)) / 2).toBe(3.5);
  expect(Math.round(2 * timeTo(coffee, 155)) / 2).toBe(7);
});

test("a pizza of 200 °F, 190 °F after 1 min at 75 °F, has 150 °F 6.13 min from the start, not 6.12 min after the reading of the first", () => {
  const pizza = { start: 200, room: 75, reading: 190, at: 1 };
  expect(rateOf(pizza)).toBeCloseTo(0.08338, 5);
  near(timeTo(pizza, 150), 6.12636);
});

test("what thaws at 44 °F from 1 °F, 12 °F after 2 h, has 33 °F after 9 h 13 min", () => {
  const hours = timeTo({ start: 1, room: 44, reading: 12, at: 2 }, 33);
  near(hours, 9.22822);
  expect(Math.abs(hours - (9 + 13 / 60))).toBeLessThan(0.02);
});

test("a base of ice cream of 210 °F, 170 °F after 2 h at 20 °F, has 30 °F after 24 h 54.7 min, not the printed 24 h 57 min", () => {
  const hours = timeTo({ start: 210, room: 20, reading: 170, at: 2 }, 30);
  near(hours, 24.9118);
  expect(hours).toBeCloseTo(24 + 54.7 / 60, 3);
});

test("a roast of 165 °F, 155 °F after 10 min at 70 °F, has 146.053 °F after 20 min (no answer printed; ours)", () => {
  near(readingAt({ start: 165, room: 70, reading: 155, at: 10 }, 20), 146.053);
});

test("100 L with 4 kg of salt, 2 L/min of 0.5 kg/L flowing through, follow 50 - 46 exp(-t/50)", () => {
  const at = (minutes: number): number => flushed(4, { flow: 2, volume: 100, inflow: 0.5 }, minutes);
  for (const t of [0, 10, 50, 200]) expect(at(t)).toBeCloseTo(50 - 46 * Math.exp(-t / 50), 10);
  expect(at(50)).toBeCloseTo(33.0775, 4);
});

test("75 L with 3 kg, 6 L/min of 0.4 kg/L flowing through, follow 30 - 27 exp(-2t/25)", () => {
  const at = (minutes: number): number => flushed(3, { flow: 6, volume: 75, inflow: 0.4 }, minutes);
  for (const t of [0, 10, 50, 200]) expect(at(t)).toBeCloseTo(30 - 27 * Math.exp((-2 * t) / 25), 10);
  expect(at(10)).toBeCloseTo(17.8681, 4);
});

test("1000 L with 10 kg, fed with 20 L/min of 0.2 and 5 L/min of 0.05 kg/L, hold 134.3 kg after an hour", () => {
  const inflow = (20 * 0.2 + 5 * 0.05) / 25;
  const kg = flushed(10, { flow: 25, volume: 1000, inflow }, 60);
  expect(kg).toBeCloseTo(134.3, 1);
  expect(kg).toBeCloseTo(134.299, 3);
});

test("100 L with 1 kg, 2 L/min of 0.1 kg/L flowing through, follow 10 - 9 exp(-t/50)", () => {
  for (const t of [0, 10, 50, 200])
    expect(flushed(1, { flow: 2, volume: 100, inflow: 0.1 }, t)).toBeCloseTo(10 - 9 * Math.exp(-t / 50), 12);
});
