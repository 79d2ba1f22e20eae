import fc from "fast-check";
import { expect, test } from "vitest";
import { steadyTopUp } from "../../../../src/core/bath/life/steady-top-up.js";
import { refill } from "../../../../src/core/bath/load/bath-state.js";
import { workLoad } from "../../../../src/core/bath/load/work-load.js";
import { baths, setting, toDepth } from "../settings.js";

test("a bath filled up with its steady liquor after each load is at strength 1 after each repetition", () => {
  let found = 0;
  fc.assert(
    fc.property(baths, ({ setting: one, mix }) => {
      const steady = steadyTopUp(one, mix);
      if (steady === undefined) return;
      found++;
      const { fresh } = one;
      let state = fresh;
      for (let repetition = 0; repetition < 20; repetition++) {
        mix.forEach((load, i) => {
          const worked = workLoad({ ...one, rule: "none" }, state, load)!.after;
          expect(steady.loads[i]!.hotL).toBeCloseTo(fresh.volumeL - worked.volumeL, 6);
          state = refill(worked, { toVolumeL: fresh.volumeL, dyePerL: steady.dyePerL });
        });
        expect(Math.abs(state.dye / fresh.dye - 1)).toBeLessThan(1e-10);
        expect(state.volumeL).toBe(fresh.volumeL);
      }
    }),
    { numRuns: 300, seed: 6 },
  );
  expect(found).toBeGreaterThan(200);
});

const losing = { ...setting, evaporationLPerSecond: 0.2 / 3600 };

test("for loads alike it is (uptake + c V_drag)/(V_evap + V_drag), c the liquor that drains off", () => {
  const load = { areaDm2: 10, ...toDepth(0.5) };
  const steady = steadyTopUp(losing, [load, load])!;
  const uptake = 0.03 * 10 * 0.5;
  const drag = 0.008;
  const evaporated = (0.2 / 3600) * workLoad(losing, setting.fresh, load)!.cycleSeconds;
  const expected = (uptake + ((600 - uptake) / 6) * drag) / (evaporated + drag);
  expect(steady.dyePerL).toBeCloseTo(expected, 9);
  expect(steady.strength).toBeCloseTo(expected / 100, 11);
  expect(steady.loads[0]!.dipSeconds).toBeCloseTo(steady.loads[1]!.dipSeconds, 9);
  expect(steady.loads[0]!.dye + steady.loads[0]!.waterMl).toBeCloseTo(steady.loads[0]!.coldMl, 9);
  expect(steady.dilution).toEqual({ kind: "liquid", fraction: 0.1 * steady.strength });
});

test("where parts take nothing and nothing drains off it is plain water", () => {
  const dry = { ...losing.handling, dragOutMlPerDm2: 0 };
  const idle = { ...losing, handling: dry, dye: { ...losing.dye, uptakePerDm2: 0 } };
  expect(steadyTopUp(idle, [{ areaDm2: 10, ...toDepth(0.5) }])!.strength).toBe(0);
});

test("where parts take nothing and nothing evaporates it is the bath's own liquor", () => {
  const still = { ...setting, evaporationLPerSecond: 0, dye: { ...setting.dye, uptakePerDm2: 0 } };
  expect(steadyTopUp(still, [{ areaDm2: 10, ...toDepth(0.5) }])!.strength).toBeCloseTo(1, 12);
});

test("where it would be stronger than the concentrate it has no dilution", () => {
  const hungry = { ...losing, dye: { ...losing.dye, uptakePerDm2: 4 } };
  const steady = steadyTopUp(hungry, [{ areaDm2: 10, ...toDepth(0.5) }])!;
  expect(steady.strength).toBeGreaterThan(10);
  expect(steady).not.toHaveProperty("dilution");
});

test("a bath that loses no liquor, or holds less dye than a load takes up, has no steady liquor", () => {
  const shut = {
    ...setting,
    evaporationLPerSecond: 0,
    handling: { ...setting.handling, dragOutMlPerDm2: 0 },
  };
  expect(steadyTopUp(shut, [{ areaDm2: 10, ...toDepth(0.5) }])).toBeUndefined();
  expect(steadyTopUp(losing, [{ areaDm2: 1e5, ...toDepth(0.5) }])).toBeUndefined();
  expect(steadyTopUp(losing, [])).toBeUndefined();
});
