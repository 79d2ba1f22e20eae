import fc from "fast-check";
import { expect, test } from "vitest";
import { pourTopUp } from "../../../../src/core/bath/heat/working/heat-state.js";
import { steadyTopUp } from "../../../../src/core/bath/life/steady-top-up.js";
import { workOn } from "../../../../src/core/bath/load/work-load.js";
import { bathToWork } from "../../../../src/core/bath/load/worked-bath.js";
import { baths, partsOf, setting, steadyHeat, toDepth, workLoad } from "../settings.js";

test("a bath filled up with its steady liquor after each load is at strength 1 after each repetition", () => {
  let found = 0;
  fc.assert(
    fc.property(baths, ({ setting: one, mix }) => {
      const steady = steadyTopUp(one, mix);
      if (steady === undefined) return;
      found++;
      const { fresh } = one;
      for (let repetition = 0; repetition < 2; repetition++) {
        const bath = bathToWork(fresh, one.heat.celsius);
        mix.forEach((load, i) => {
          workOn(bath, { ...one, rule: "none" }, load);
          const lostL = fresh.volumeL - bath.volumeL;
          expect(steady.loads[i]!.hotL).toBeCloseTo(lostL, 6);
          bath.dye += lostL * steady.dyePerL;
          pourTopUp(one.heat, bath, { volumeL: lostL, celsius: one.topUpCelsius });
        });
        expect(Math.abs(bath.dye / fresh.dye - 1)).toBeLessThan(1e-10);
        expect(bath.volumeL).toBeCloseTo(fresh.volumeL, 12);
      }
    }),
    { numRuns: 300, seed: 6 },
  );
  expect(found).toBeGreaterThan(200);
});

const losing = { ...setting, heat: steadyHeat(0.2) };

test("for loads alike it is (uptake + c V_drag)/(V_evap + V_drag), c the liquor that drains off", () => {
  const load = { ...partsOf(10), ...toDepth(0.5) };
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
  expect(steadyTopUp(idle, [{ ...partsOf(10), ...toDepth(0.5) }])!.strength).toBe(0);
});

test("where parts take nothing and nothing evaporates it is the bath's own liquor", () => {
  const still = { ...setting, heat: steadyHeat(0), dye: { ...setting.dye, uptakePerDm2: 0 } };
  expect(steadyTopUp(still, [{ ...partsOf(10), ...toDepth(0.5) }])!.strength).toBeCloseTo(1, 12);
});

test("where it would be stronger than the concentrate it has no dilution", () => {
  const hungry = { ...losing, dye: { ...losing.dye, uptakePerDm2: 4 } };
  const steady = steadyTopUp(hungry, [{ ...partsOf(10), ...toDepth(0.5) }])!;
  expect(steady.strength).toBeGreaterThan(10);
  expect(steady).not.toHaveProperty("dilution");
});

test("a bath that loses no liquor, or holds less dye than a load takes up, has no steady liquor", () => {
  const shut = {
    ...setting,
    heat: steadyHeat(0),
    handling: { ...setting.handling, dragOutMlPerDm2: 0 },
  };
  expect(steadyTopUp(shut, [{ ...partsOf(10), ...toDepth(0.5) }])).toBeUndefined();
  expect(steadyTopUp(losing, [{ ...partsOf(1e5), ...toDepth(0.5) }])).toBeUndefined();
  expect(steadyTopUp(losing, [])).toBeUndefined();
});
