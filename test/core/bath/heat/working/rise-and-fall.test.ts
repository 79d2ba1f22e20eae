import fc from "fast-check";
import { expect, test } from "vitest";
import { heatUp } from "../../../../../src/core/bath/heat/heating.js";
import { bathHeat } from "../../../../../src/core/bath/heat/working/bath-heat.js";
import { heatState } from "../../../../../src/core/bath/heat/working/heat-state.js";
import { fallTo, riseTo } from "../../../../../src/core/bath/heat/working/rise-and-fall.js";
import { real, room, samples, six } from "./tanks.js";

test("heating up from the room's temperature takes what heatUp says, less what warms no water that is gone", () => {
  const tank = { ...six, volumeL: 6 };
  const heat = bathHeat(tank, 80, room);
  const state = heatState(20, 6);
  const up = heatUp(tank, 80, room);
  if (!up.reached) throw new Error("reached");
  const minutes = riseTo(heat, state, 80)! / 60;
  expect(minutes).toBeLessThan(up.minutes);
  expect(minutes / up.minutes).toBeGreaterThan(1 - state.evaporatedL / 6);
  expect(state.heaterKwh).toBeCloseTo((0.9 * minutes) / 60, 9);
});

test("a sealed bath heats up in the time of heatUp to 1e-6", () => {
  const tank = { ...six, volumeL: 6, surfaceCm2: 0 };
  const up = heatUp(tank, 80, room);
  if (!up.reached) throw new Error("reached");
  const minutes = riseTo(bathHeat(tank, 80, room), heatState(20, 6), 80)! / 60;
  expect(Math.abs(minutes / up.minutes - 1)).toBeLessThan(1e-6);
});

test("a bath that is warm enough takes no time, one that is to pass its thermostat none at all", () => {
  const heat = bathHeat(six, 80, room);
  const state = heatState(79.5, 6);
  expect(riseTo(heat, state, 79)).toBe(0);
  expect(riseTo(heat, state, 81)).toBeUndefined();
  expect(state).toEqual(heatState(79.5, 6));
});

test("a heater rises to where heatUp says that it stops, and no further", () => {
  const tank = { ...six, volumeL: 6, cover: "none" as const, heaterW: 400 };
  const up = heatUp(tank, 80, room);
  if (up.reached) throw new Error("reached");
  const heat = bathHeat(tank, 80, room);
  const state = heatState(60, 6);
  expect(riseTo(heat, state, up.celsius + 0.001)).toBeUndefined();
  expect(state).toEqual(heatState(60, 6));
  expect(riseTo(heat, state, up.celsius - 0.001)).toBeGreaterThan(3600);
  expect(state.celsius).toBe(up.celsius - 0.001);
});

test("an unknown heater brings a bath to its temperature in no time, and charges the heat", () => {
  const { heaterW: _, ...unknown } = six;
  const heat = bathHeat(unknown, 80, room);
  const state = heatState(75, 6);
  expect(riseTo(heat, state, 79)).toBe(0);
  expect(state.celsius).toBe(80);
  expect(state.heaterKwh).toBeCloseTo((5 * 6 * heat.jPerLK) / 0.9 / 3.6e6, 12);
});

test("a bath that cools draws nothing, loses what it held, and dwindles by what evaporates", () => {
  const heat = bathHeat(six, 80, room);
  const state = heatState(80, 6);
  const seconds = fallTo(heat, state, 45)!;
  expect(state).toMatchObject({ celsius: 45, seconds, heaterKwh: 0, agitationKwh: 0 });
  expect(state.volumeL + state.evaporatedL).toBeCloseTo(6, 12);
  expect(state.lostKwh).toBeCloseTo(-state.bathKwh, 12);
  // By hand: 6 L lose 210 W/K on the way, a good hour.
  expect(seconds / 60).toBeGreaterThan(60);
  expect(seconds / 60).toBeLessThan(120);
});

test("neither a lid nor balls slow cooling, since they are off", () => {
  const seconds = (cover: "none" | "lid" | "balls"): number =>
    fallTo(bathHeat({ ...six, cover }, 80, room), heatState(80, 6), 45)!;
  expect(seconds("lid")).toBe(seconds("none"));
  expect(seconds("balls")).toBe(seconds("none"));
});

test("a bath does not cool below what the room lets it", () => {
  const heat = bathHeat(six, 80, { celsius: 30, humidity: 1 });
  const state = heatState(80, 6);
  expect(fallTo(heat, state, 29)).toBeUndefined();
  expect(state).toEqual(heatState(80, 6));
  expect(fallTo(heat, state, 85)).toBe(0);
});

test("the stronger the heater, the shorter the wait", () => {
  fc.assert(
    fc.property(samples, real(50, 400), real(1, 200), real(0.1, 10), (sample, perL, more, below) => {
      const waits = [perL, perL + more].map((heaterWPerL) => {
        const heaterW = heaterWPerL * sample.volumeL;
        const heat = bathHeat({ ...sample.tank, heaterW }, sample.celsius, sample.room);
        return riseTo(heat, heatState(sample.celsius - below - 1, sample.volumeL), sample.celsius - 1);
      });
      if (waits[0] !== undefined) expect(waits[1]).toBeLessThan(waits[0]);
    }),
  );
});
