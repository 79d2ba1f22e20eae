import fc from "fast-check";
import { expect, test } from "vitest";
import { bathHeat, type WorkedTank } from "../../../../../src/core/bath/heat/working/bath-heat.js";
import { dip } from "../../../../../src/core/bath/heat/working/dip.js";
import { dyePace } from "../../../../../src/core/bath/heat/working/dye-pace.js";
import { heatState, immerseParts } from "../../../../../src/core/bath/heat/working/heat-state.js";
import { hold } from "../../../../../src/core/bath/heat/working/hold.js";
import { rateFactor } from "../../../../../src/core/uptake/law/arrhenius.js";
import { limited, real, room, samples, six } from "./tanks.js";

const ENERGY = 75_000;

test("parts without heat capacity under a heater without a limit take the nominal time at T_set", () => {
  fc.assert(
    fc.property(samples, real(1, 600), real(0, 150), ({ tank, celsius, volumeL, room }, seconds, kj) => {
      const { heaterW: _, ...endless } = tank;
      const heat = bathHeat({ ...endless, agitationW: 0 }, celsius, room);
      const state = heatState(celsius, volumeL);
      immerseParts(heat, state, { jPerK: 0, celsius: room.celsius });
      expect(dip(heat, state, seconds, dyePace(1000 * kj, celsius))).toBe(seconds);
      expect(state.celsius).toBe(celsius);
    }),
  );
});

test("the integral of the rate over the dip is what the depth needs", () => {
  fc.assert(
    fc.property(
      samples,
      real(5, 400),
      real(0.005, 0.1),
      real(0, 6),
      ({ tank, celsius, volumeL, room }, needed, share, below) => {
        const heat = bathHeat(limited(tank, volumeL), celsius, room);
        const start = heatState(celsius - below, volumeL);
        immerseParts(heat, start, { jPerK: share * volumeL * heat.jPerLK, celsius: room.celsius });
        const dipped = { ...start };
        const seconds = dip(heat, dipped, needed, dyePace(ENERGY, celsius));
        // The same bath followed by the wall clock, its rate summed by the trapezium rule.
        const steps = 2000;
        const rate = (at: number): number =>
          rateFactor({ activationEnergyJPerMol: ENERGY, celsius: at, referenceCelsius: celsius });
        let sum = 0;
        for (let i = 0; i < steps; i++) {
          const before = rate(start.celsius);
          hold(heat, heat.dipping, start, seconds / steps);
          sum += ((before + rate(start.celsius)) / 2) * (seconds / steps);
        }
        expect(Math.abs(sum / needed - 1)).toBeLessThan(1e-5);
        expect(Math.abs(start.celsius - dipped.celsius)).toBeLessThan(1e-5);
        expect(Math.abs(start.heaterKwh - dipped.heaterKwh)).toBeLessThan(1e-5 * start.heaterKwh + 1e-9);
        expect(Math.abs(start.lostKwh - dipped.lostKwh)).toBeLessThan(1e-5 * Math.abs(start.lostKwh) + 1e-9);
      },
    ),
    { numRuns: 60 },
  );
});

test("a dip in a bath that the parts cool takes longer, the longer the weaker the heater", () => {
  const seconds = [500, 900, 2000].map((heaterW) => {
    const heat = bathHeat({ ...six, heaterW } as WorkedTank, 80, room);
    const state = heatState(79, 6);
    immerseParts(heat, state, { jPerK: 476, celsius: 20 });
    return dip(heat, state, 60, dyePace(ENERGY, 80));
  });
  expect(seconds[0]).toBeGreaterThan(seconds[1]!);
  expect(seconds[1]).toBeGreaterThan(seconds[2]!);
  expect(seconds[2]).toBeGreaterThan(60);
  expect(seconds[0]).toBeLessThan(72);
});

test("the stronger the heater, the shorter the dip; the deeper the shade, the longer", () => {
  fc.assert(
    fc.property(
      samples,
      real(0, 400),
      real(1, 200),
      real(5, 300),
      ({ tank, celsius, volumeL, room }, perL, more, needed) => {
        const timed = (heaterWPerL: number, seconds: number): number => {
          const heat = bathHeat({ ...tank, heaterW: heaterWPerL * volumeL }, celsius, room);
          const state = heatState(celsius, volumeL);
          immerseParts(heat, state, { jPerK: 0.05 * volumeL * heat.jPerLK, celsius: room.celsius });
          return dip(heat, state, seconds, dyePace(ENERGY, celsius));
        };
        const plain = timed(perL, needed);
        expect(timed(perL + more, needed)).toBeLessThanOrEqual(plain * (1 + 1e-7));
        expect(timed(perL, needed * 1.1)).toBeGreaterThan(plain);
      },
    ),
  );
});

test("a dip of no seconds takes none", () => {
  const state = heatState(70, 6);
  expect(dip(bathHeat(six, 80, room), state, 0, dyePace(ENERGY, 80))).toBe(0);
  expect(state).toEqual(heatState(70, 6));
});
