import fc from "fast-check";
import { expect, test } from "vitest";
import { holdingPowerW } from "../../../../../src/core/bath/heat/heating.js";
import { bathHeat, bathLossW } from "../../../../../src/core/bath/heat/working/bath-heat.js";
import { heatState } from "../../../../../src/core/bath/heat/working/heat-state.js";
import { hold } from "../../../../../src/core/bath/heat/working/hold.js";
import { real, room, samples, six } from "./tanks.js";

const held = (tank: typeof six, phase: "covered" | "dipping" | "open", from: number, seconds: number) => {
  const heat = bathHeat(tank, 80, room);
  const state = heatState(from, 6);
  hold(heat, heat[phase], state, seconds);
  return { heat, state };
};

test("a heater that is strong enough holds the bath and gives what is missing, no more", () => {
  const { state } = held(six, "open", 80, 600);
  expect(state.celsius).toBe(80);
  expect(state.heaterKwh).toBeCloseTo((holdingPowerW(six, 80, room) * 600) / 3.6e6, 6);
  expect(state.seconds).toBe(600);
});

test("agitation spares the heater as much as it gives", () => {
  const [open, dipping] = [held(six, "open", 80, 600), held(six, "dipping", 80, 600)];
  const sparedKwh = 0.9 * (open.state.heaterKwh - dipping.state.heaterKwh);
  expect(sparedKwh).toBeCloseTo((180 * 600) / 3.6e6, 12);
  expect(dipping.state.agitationKwh).toBeCloseTo(sparedKwh, 12);
});

test("agitation carries a bath over its temperature where it gives more than is lost, with the heater off", () => {
  const loud = { ...six, agitationW: 600 } as unknown as typeof six;
  const { heat, state } = held(loud, "dipping", 80, 600);
  expect(state.celsius).toBeGreaterThan(82);
  expect(state.heaterKwh).toBe(0);
  // Without it the bath falls back to its temperature and is held there.
  hold(heat, heat.open, state, 3600);
  expect(state.celsius).toBe(80);
  expect(state.heaterKwh).toBeGreaterThan(0);
});

test("a bath whose heater is too weak with the lid off settles where it loses what it gets", () => {
  const weak = { ...six, heaterW: 400, agitationW: 0 } as unknown as typeof six;
  const { heat, state } = held(weak, "open", 80, 6 * 3600);
  expect(state.celsius).toBeGreaterThan(75);
  expect(state.celsius).toBeLessThan(77);
  expect(bathLossW(heat, heat.open.openM2, state.celsius)).toBeCloseTo(360, 1);
});

test("a bath below its temperature rises with all the heater has, and is held from there on", () => {
  const { state } = held(six, "covered", 78, 600);
  expect(state.celsius).toBe(80);
  const longer = held(six, "covered", 78, 1200).state;
  expect(longer.heaterKwh - state.heaterKwh).toBeCloseTo(
    (bathLossW(bathHeat(six, 80, room), 0.009, 80) / 0.9) * (600 / 3.6e6),
    9,
  );
});

test("the stronger the heater, the warmer the bath", () => {
  fc.assert(
    fc.property(
      samples,
      real(0, 400),
      real(1, 200),
      real(1, 1800),
      real(0, 8),
      (sample, perL, more, seconds, below) => {
        const ends = [perL, perL + more].map((heaterWPerL) => {
          const heaterW = heaterWPerL * sample.volumeL;
          const heat = bathHeat({ ...sample.tank, heaterW }, sample.celsius, sample.room);
          const state = heatState(sample.celsius - below, sample.volumeL);
          hold(heat, heat.open, state, seconds);
          return state.celsius;
        });
        expect(ends[1]).toBeGreaterThanOrEqual(ends[0]! - 1e-7);
      },
    ),
  );
});

test("a bath that boils away is dry, and stays as warm as it was", () => {
  const { state } = held(six, "open", 80, 100 * 3600);
  expect(state.volumeL).toBe(0);
  expect(state.evaporatedL).toBe(6);
  expect(state.seconds).toBe(100 * 3600);
  expect(state.celsius).toBe(80);
});
