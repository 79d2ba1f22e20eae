import fc from "fast-check";
import { expect, test } from "vitest";
import { type BathHeat, bathHeat } from "../../../../../src/core/bath/heat/working/bath-heat.js";
import { type HeatState, heatState } from "../../../../../src/core/bath/heat/working/heat-state.js";
import { hold } from "../../../../../src/core/bath/heat/working/hold.js";
import { exponentialTank, limited, moves, samples } from "./tanks.js";

/** What an account is out by, of all that passed through it [kWh]. */
function imbalance(heat: BathHeat, now: HeatState, before: HeatState): number {
  const of = (key: keyof HeatState): number => now[key] - before[key];
  const given = heat.heaterEfficiency * of("heaterKwh") + of("agitationKwh");
  const kept = of("bathKwh") + of("partsKwh") + of("topUpKwh");
  const passed = Math.abs(given) + Math.abs(of("bathKwh")) + Math.abs(of("lostKwh"));
  return (given - kept - of("lostKwh")) / Math.max(passed, 1e-3);
}

test("heat given is in the bath, in parts, in top-ups or lost, to 1e-9 in each stretch and in sum", () => {
  let stretches = 0;
  fc.assert(
    fc.property(samples, moves, ({ tank, celsius, volumeL, room }, list) => {
      const heat = bathHeat(tank, celsius, room);
      const start = heatState(celsius, volumeL);
      const state = { ...start };
      for (const move of list) {
        const before = { ...state };
        move(heat, state);
        expect(Math.abs(imbalance(heat, state, before))).toBeLessThan(1e-9);
        expect(Object.values(state).every(Number.isFinite)).toBe(true);
        stretches++;
      }
      expect(Math.abs(imbalance(heat, state, start))).toBeLessThan(1e-9);
    }),
    { numRuns: 400 },
  );
  expect(stretches).toBeGreaterThan(1000);
});

test("what the bath holds is Σ C dT of its liquor as it dwindles", () => {
  fc.assert(
    fc.property(samples, ({ tank, celsius, volumeL, room }) => {
      const heat = bathHeat(limited(tank, volumeL), celsius, room);
      const state = heatState(celsius - 4, volumeL);
      let kwh = 0;
      for (let i = 0; i < 400; i++) {
        const before = { ...state };
        hold(heat, heat.open, state, 3);
        const meanL = (before.volumeL + state.volumeL) / 2;
        kwh += (meanL * heat.jPerLK * (state.celsius - before.celsius)) / 3.6e6;
      }
      expect(Math.abs(state.bathKwh - kwh)).toBeLessThan(1e-6 * Math.abs(kwh) + 1e-9);
    }),
    { numRuns: 100 },
  );
});

test("halving the step changes no digit that is printed", () => {
  fc.assert(
    fc.property(samples, moves, ({ tank, celsius, volumeL, room }, list) => {
      const heat = bathHeat(tank, celsius, room);
      const { share, kelvin } = heat.step;
      const fine: BathHeat = { ...heat, step: { share: share / 2, kelvin: kelvin / 2 } };
      const [state, other] = [heatState(celsius, volumeL), heatState(celsius, volumeL)];
      for (const move of list) {
        move(heat, state);
        move(fine, other);
      }
      expect(Math.abs(state.celsius - other.celsius)).toBeLessThan(1e-3);
      expect(Math.abs(state.seconds - other.seconds)).toBeLessThan(3e-5 * other.seconds + 1e-9);
      expect(Math.abs(state.evaporatedL - other.evaporatedL)).toBeLessThan(1e-5 * volumeL);
      expect(Math.abs(state.heaterKwh - other.heaterKwh)).toBeLessThan(1e-5 * other.heaterKwh + 1e-9);
    }),
    { numRuns: 400 },
  );
});

test("a bath that loses through its walls alone cools by one exponential", () => {
  const heat = exponentialTank(1e-4, 20, 80);
  const state = heatState(80, 1);
  hold(heat, heat.cooling, state, 5000);
  expect(state.celsius).toBeCloseTo(20 + 60 * Math.exp(-0.5), 6);
  expect(state.evaporatedL).toBe(0);
});
