import { expect, test } from "vitest";
import { type Phase, tankLossW } from "../../../../../src/core/bath/heat/heat-loss.js";
import { evaporationKgPerH } from "../../../../../src/core/bath/heat/heating.js";
import { bathHeat, type WorkedTank } from "../../../../../src/core/bath/heat/working/bath-heat.js";
import { dip } from "../../../../../src/core/bath/heat/working/dip.js";
import { dyePace } from "../../../../../src/core/bath/heat/working/dye-pace.js";
import {
  heatState,
  immerseParts,
  liftParts,
  pourTopUp,
} from "../../../../../src/core/bath/heat/working/heat-state.js";
import { hold } from "../../../../../src/core/bath/heat/working/hold.js";
import { riseTo } from "../../../../../src/core/bath/heat/working/rise-and-fall.js";
import { room, six } from "./tanks.js";

const SET = 80;
const RACK = 85;
const BELOW = 1;
const UNLOAD = 90;
const NEEDED = 60;
const LOADS = 20;
const PARTS = 35 * 8 * 1.7;
const DRAG_OUT_L = 0.012;
/** Topped up below this share of 6 L: some 0.44 L of cold water every dozen loads. */
const MARK = 0.93;

interface Loaded {
  readonly waitSeconds: number;
  readonly dipSeconds: number;
  readonly before: number;
  readonly after: number;
  readonly topUpL: number;
}

/** Twenty loads by the functions under test. */
function byStretches(tank: WorkedTank) {
  const heat = bathHeat(tank, SET, room);
  const pace = dyePace(75_000, SET);
  const state = heatState(SET, 6);
  const loads: Loaded[] = [];
  for (let i = 0; i < LOADS; i++) {
    hold(heat, heat.covered, state, RACK);
    const waitSeconds = riseTo(heat, state, SET - BELOW)!;
    const before = state.celsius;
    immerseParts(heat, state, { jPerK: PARTS, celsius: 20 });
    const dipSeconds = dip(heat, state, NEEDED, pace);
    const after = state.celsius;
    liftParts(state);
    state.volumeL -= DRAG_OUT_L;
    hold(heat, heat.open, state, UNLOAD);
    const topUpL = state.volumeL < MARK * 6 ? 6 - state.volumeL : 0;
    if (topUpL > 0) pourTopUp(heat, state, { volumeL: topUpL, celsius: 20 });
    loads.push({ waitSeconds, dipSeconds, before, after, topUpL });
  }
  return { loads, state };
}

/** The same by tiny steps of the plain equations: nothing of the functions under test, but the tank's losses and vapour. */
function byTinySteps(tank: WorkedTank, dt: number) {
  // Water of 80 °C, by the IAPWS table.
  const kgPerL = 0.97179;
  const liquor = kgPerL * 4186;
  const rate = (at: number): number =>
    Math.exp((-75_000 / 8.314462618) * (1 / (at + 273.15) - 1 / (SET + 273.15)));
  let [celsius, volume, evaporatedL] = [SET, 6, 0];
  const joules = { heater: 0, agitation: 0, lost: 0, parts: 0, topUp: 0, bath: 0 };
  const tick = (seconds: number, phase: Phase, agitationW = 0, partsJPerK = 0): void => {
    const capacity = volume * liquor + partsJPerK;
    const lossW = tankLossW(tank, celsius, room, phase);
    // The thermostat gives what brings the bath to its temperature by the end of the tick, within the heater's power.
    const missingW = ((SET - celsius) * capacity) / seconds + lossW - agitationW;
    const heatW = Math.min(tank.heaterW! * tank.heaterEfficiency, Math.max(0, missingW));
    const kelvin = ((heatW + agitationW - lossW) * seconds) / capacity;
    joules.heater += (heatW / tank.heaterEfficiency) * seconds;
    joules.agitation += agitationW * seconds;
    joules.lost += lossW * seconds;
    joules.parts += partsJPerK * kelvin;
    joules.bath += volume * liquor * kelvin;
    const gone = ((evaporationKgPerH(tank, celsius, room, phase) / kgPerL) * seconds) / 3600;
    volume -= gone;
    evaporatedL += gone;
    celsius += kelvin;
  };
  /** The bath takes the temperature of its mixture with a body from the room. */
  const mix = (jPerK: number): number => {
    const mixed = (volume * liquor * celsius + jPerK * 20) / (volume * liquor + jPerK);
    joules.bath += volume * liquor * (mixed - celsius);
    celsius = mixed;
    return jPerK * (mixed - 20);
  };
  const loads: Loaded[] = [];
  for (let i = 0; i < LOADS; i++) {
    for (let t = 0; t < RACK - dt / 2; t += dt) tick(dt, "heating");
    let [waitSeconds, dipSeconds, done] = [0, 0, 0];
    for (; celsius < SET - BELOW; waitSeconds += dt) tick(dt, "heating");
    const before = celsius;
    joules.parts += mix(PARTS);
    while (done < NEEDED) {
      const seconds = Math.min(dt, (NEEDED - done) / rate(celsius));
      done = seconds < dt ? NEEDED : done + rate(celsius) * dt;
      dipSeconds += seconds;
      tick(seconds, "dipping", tank.agitationW, PARTS);
    }
    const after = celsius;
    volume -= DRAG_OUT_L;
    for (let t = 0; t < UNLOAD - dt / 2; t += dt) tick(dt, "dipping");
    const topUpL = volume < MARK * 6 ? 6 - volume : 0;
    joules.topUp += mix(topUpL * liquor);
    volume += topUpL;
    loads.push({ waitSeconds, dipSeconds, before, after, topUpL });
  }
  return { loads, joules, evaporatedL };
}

test.each([500, 900, 2000])(
  "twenty loads of 35 parts of 8 g in 6 L with %d W are those of a plain simulation",
  (heaterW) => {
    const tank: WorkedTank = { ...six, heaterW };
    const ours = byStretches(tank);
    const dt = 0.02;
    const plain = byTinySteps(tank, dt);
    expect(ours.loads).toHaveLength(LOADS);
    for (const [i, load] of ours.loads.entries()) {
      const other = plain.loads[i]!;
      expect(Math.abs(load.dipSeconds - other.dipSeconds)).toBeLessThan(0.002);
      // A wait by ticks ends with one.
      expect(Math.abs(load.waitSeconds - other.waitSeconds)).toBeLessThan(1.5 * dt);
      for (const key of ["before", "after", "topUpL"] as const)
        expect(Math.abs(load[key] - other[key])).toBeLessThan(5e-4);
    }
    for (const key of ["heater", "agitation", "lost", "parts", "topUp", "bath"] as const)
      expect(Math.abs((ours.state[`${key}Kwh`] * 3.6e6) / plain.joules[key] - 1)).toBeLessThan(2e-4);
    expect(ours.state.evaporatedL / plain.evaporatedL).toBeCloseTo(1, 4);
  },
);

test("of the twenty loads, 500 W make some wait after each top-up and lengthen their dips, 2000 W hardly", () => {
  const [weak, , strong] = [500, 900, 2000].map((heaterW) => byStretches({ ...six, heaterW }).loads);
  const longest = (loads: readonly Loaded[], key: "waitSeconds" | "dipSeconds"): number =>
    Math.max(...loads.map((load) => load[key]));
  expect(longest(weak!, "waitSeconds")).toBeGreaterThan(120);
  expect(longest(weak!, "dipSeconds")).toBeGreaterThan(1.1 * NEEDED);
  expect(longest(strong!, "waitSeconds")).toBe(0);
  expect(longest(strong!, "dipSeconds")).toBeLessThan(1.02 * NEEDED);
});
