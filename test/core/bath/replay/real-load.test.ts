import fc from "fast-check";
import { expect, test } from "vitest";
import { bathHeat } from "../../../../src/core/bath/heat/working/bath-heat.js";
import { strengthOf } from "../../../../src/core/bath/load/bath-setting.js";
import { workOn } from "../../../../src/core/bath/load/work-load.js";
import { bathToWork } from "../../../../src/core/bath/load/worked-bath.js";
import { passTime, type RealBath } from "../../../../src/core/bath/replay/real-bath.js";
import { replayLoad } from "../../../../src/core/bath/replay/real-load.js";
import { freshDepth } from "../../../../src/core/uptake/law/uptake-model.js";
import { hook, tank } from "../../plan/sample.js";
import { model, setting } from "../settings.js";

const room = { celsius: 20, humidity: 0.5 };
const heat = bathHeat({ ...tank, heaterW: 600 }, 80, room);
const real: RealBath = {
  setting: { ...setting, rule: "none", heat, handling: { ...setting.handling, belowKelvin: 1 } },
  uptake: model,
  madeUp: 1,
  coolToCelsius: 45,
};
const bath = (dye: number, celsius = 80) => ({ ...bathToWork({ volumeL: 6, dye }, celsius), heated: true });

test("a load replayed from the seconds that workOn gives takes up the dye that it took up", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 250, noNaN: true }),
      fc.double({ min: 60, max: 900, noNaN: true }),
      fc.integer({ min: 1, max: 24 }),
      fc.double({ min: 0.01, max: 2, noNaN: true }),
      (freshSeconds, dye, parts, uptakePerDm2) => {
        const bound = {
          ...real,
          setting: { ...real.setting, dye: { ...setting.dye, uptakePerDm2 } },
        };
        const worked = bath(dye);
        const depth = freshDepth(model, freshSeconds);
        fc.pre(workOn(worked, bound.setting, { part: hook, parts, depth, freshSeconds }) === undefined);
        const again = bath(dye);
        const found = replayLoad(bound, again, { part: hook, parts, dipped: { seconds: worked.dipSeconds } });
        expect(found.freshSeconds).toBeCloseTo(freshSeconds, 5);
        expect(found.depth).toBeCloseTo(depth, 7);
        expect(again.dye).toBeCloseTo(worked.dye, 6);
        expect(again.volumeL).toBeCloseTo(worked.volumeL, 9);
        expect(again.celsius).toBeCloseTo(worked.celsius, 6);
        const planned = bath(dye);
        replayLoad(bound, planned, { part: hook, parts, dipped: { freshSeconds } });
        expect(planned.dye).toBeCloseTo(worked.dye, 9);
        expect(planned.dipSeconds).toBeCloseTo(worked.dipSeconds, 6);
      },
    ),
    { numRuns: 50 },
  );
});

test("the temperature that was read counts: a cooler bath dyes less in the same time", () => {
  const depthAt = (celsius: number) =>
    replayLoad(real, bath(600), { part: hook, parts: 20, celsius, dipped: { seconds: 60 } }).depth;
  expect(depthAt(70)).toBeLessThan(0.6 * depthAt(80));
});

test("a bath cannot take up more dye than it holds", () => {
  const poor = { ...real, setting: { ...real.setting, dye: { ...setting.dye, uptakePerDm2: 1e3 } } };
  const worked = bath(10);
  replayLoad(poor, worked, { part: hook, parts: 24, dipped: { seconds: 300 } });
  expect(worked.dye).toBe(0);
  expect(strengthOf(worked, setting.fresh)).toBe(0);
});

test("between loads the lid is on and the heater holds; after half an hour it counts as off", () => {
  const waited = (seconds: number, overNight = false) => {
    const one = bath(600);
    passTime(real, one, seconds, overNight);
    return one;
  };
  expect(waited(1800)).toMatchObject({ celsius: 80, heated: true });
  const hour = waited(3600);
  expect(hour.heated).toBe(false);
  expect(hour.celsius).toBeLessThan(79);
  expect(hour.celsius).toBeGreaterThan(50);
  // Over night it cools as at the end of a day, and no further.
  expect(waited(50_000, true).celsius).toBe(45);
  const open = bath(600);
  passTime({ ...real, coolToCelsius: 79.9 }, open, 50_000, true);
  expect(open.celsius).toBe(79.9);
});

test("a bath that was switched off is hot again when parts go in, and loses nothing while nobody is there", () => {
  const cold = { ...bath(600, 20), heated: false };
  passTime(real, cold, 1e6, true);
  expect(cold).toMatchObject({ celsius: 20, volumeL: 6 });
  replayLoad(real, cold, { part: hook, parts: 20, dipped: { seconds: 60 } });
  expect(cold.celsiusBefore).toBeCloseTo(80, 6);
  expect(cold.heated).toBe(true);
});
