import fc from "fast-check";
import { expect, test } from "vitest";
import { spentStrength } from "../../../../src/core/bath/evidence/spent-strength.js";
import { lookUp } from "../../../../src/core/bath/heat/working/celsius-table.js";
import { bathLife, type LifeEnd, lifeLoadLimit } from "../../../../src/core/bath/life/bath-life.js";
import type { BathSetting } from "../../../../src/core/bath/load/bath-setting.js";
import { fill } from "../../../../src/core/bath/load/fill.js";
import { nextLoad } from "../../../../src/core/bath/load/load-size.js";
import type { LoadWork } from "../../../../src/core/bath/load/load-work.js";
import { mostParts, workOn } from "../../../../src/core/bath/load/work-load.js";
import { bathToWork } from "../../../../src/core/bath/load/worked-bath.js";
import { baths, partsOf, setting, steadyHeat, toDepth } from "../settings.js";

/** The life load by load, without any short cut. */
function plainLife(
  one: BathSetting,
  mix: readonly LoadWork[],
  age: { everyDays?: number; shelfLifeDays?: number },
) {
  const { handling, fresh, heat } = one;
  const bath = bathToWork(fresh, heat.celsius);
  const seen: { strength: number; volumeL: number; dipSeconds: number }[] = [];
  const sums = { loads: 0, parts: 0, areaDm2: 0, takenUp: 0, draggedOut: 0, added: 0, waterMl: 0 };
  const end = (endedBy: LifeEnd, repeats: number) => ({ ...sums, endedBy, repeats, dyeLeft: bath.dye, seen });
  const pour = () => {
    sums.added += bath.topUpDye;
    sums.waterMl += bath.topUpWaterMl;
  };
  for (let repeat = 0; ; repeat++) {
    if (repeat * (age.everyDays ?? 0) > (age.shelfLifeDays ?? Number.POSITIVE_INFINITY))
      return end("shelf-life", repeat);
    if (repeat > 0) {
      bath.volumeL *= lookUp(one.cooled!, bath.celsius);
      fill(one, bath, 1);
      pour();
      bath.celsius = heat.celsius;
    }
    for (const load of mix)
      for (let left = load.parts; left > 0; ) {
        if (sums.loads === lifeLoadLimit) return end("load-limit", repeat);
        const most = mostParts(one, bath, load.part);
        if (most < 1) return end("too-little-liquor", repeat);
        const parts = nextLoad(left, most);
        left -= parts;
        const hindered = workOn(bath, one, { ...load, parts }, handling.longestSeconds);
        if (hindered !== undefined) return end(hindered, repeat);
        seen.push({
          strength: bath.strengthBefore,
          volumeL: bath.volumeBeforeL,
          dipSeconds: bath.dipSeconds,
        });
        sums.loads += 1;
        sums.parts += parts;
        sums.areaDm2 += parts * load.part.areaDm2;
        sums.takenUp += bath.takenUp;
        sums.draggedOut += bath.draggedOut;
        pour();
      }
  }
}

const ages: fc.Arbitrary<{ everyDays?: number; shelfLifeDays?: number }> = fc.oneof(
  fc.constant({}),
  fc.record({ everyDays: fc.integer({ min: 0, max: 9 }), shelfLifeDays: fc.integer({ min: 0, max: 400 }) }),
);

test("a life with its short cut for baths that go in a circle is the plain loop's to 1e-12", () => {
  const ended = new Map<LifeEnd, number>();
  let rounds = 0;
  fc.assert(
    fc.property(baths, ages, ({ setting: one, mix }, age) => {
      const life = bathLife(one, mix, age);
      const plain = plainLife(one, mix, age);
      ended.set(life.endedBy, (ended.get(life.endedBy) ?? 0) + 1);
      if (life.loads > 500) rounds++;
      expect([life.endedBy, life.loads, life.parts, life.repeats]).toEqual([
        plain.endedBy,
        plain.loads,
        plain.parts,
        plain.repeats,
      ]);
      for (const key of ["areaDm2", "takenUp", "draggedOut", "added", "waterMl", "dyeLeft"] as const)
        expect(Math.abs(life[key] - plain[key])).toBeLessThanOrEqual(1e-12 * Math.max(plain[key], 1));
      for (const { load, ...point } of life.trace) {
        for (const key of ["strength", "volumeL", "dipSeconds"] as const)
          expect(Math.abs(point[key] - plain.seen[load - 1]![key])).toBeLessThanOrEqual(
            1e-12 * Math.max(1, plain.seen[load - 1]![key]),
          );
      }
    }),
    { numRuns: 60, seed: 6, endOnFailure: true },
  );
  // Long, short and aged lives were all among them.
  expect(rounds).toBeGreaterThan(10);
  for (const end of ["too-little-liquor", "shelf-life", "load-limit"] as const)
    expect(ended.get(end)).toBeGreaterThan(8);
});

test("dye balances over a life: fresh and added is taken up, dragged out and left", () => {
  fc.assert(
    fc.property(baths, ages, ({ setting: one, mix }, age) => {
      const life = bathLife(one, mix, age);
      const left = life.dyeUsed - life.takenUp - life.draggedOut - life.dyeLeft;
      expect(Math.abs(left)).toBeLessThan(1e-9 * life.dyeUsed);
    }),
  );
});

const load: LoadWork = { ...partsOf(10, 8), ...toDepth(0.5) };

test("a life lasts in days as long as its finished repetitions take, or as the dye keeps", () => {
  const spent = bathLife({ ...setting, rule: "none" }, [load], { everyDays: 3 });
  expect(spent.endedBy).toBe("too-little-liquor");
  expect(spent.days).toBe(3 * spent.repeats);
  const aged = bathLife(setting, [load], { everyDays: 7, shelfLifeDays: 30 });
  // On days 0, 7, 14, 21 and 28.
  expect([aged.endedBy, aged.repeats, aged.days]).toEqual(["shelf-life", 5, 30]);
  expect(bathLife(setting, [load], {}).days).toBeNull();
});

test("a bath kept at strength for ever has a trace of 60 points from the first load to the last", () => {
  const life = bathLife(setting, [load, { ...load, ...toDepth(0.2) }, { ...load, ...partsOf(4, 8) }], {});
  expect(life.endedBy).toBe("load-limit");
  expect(life.trace).toHaveLength(60);
  expect(life.trace[0]).toMatchObject({ load: 1, portion: 1, parts: 8, strength: 1, celsius: 80 });
  expect(life.trace.at(-1)).toMatchObject({ load: 10_000, portion: 1 });
});

test("the trace of a short life is every load", () => {
  const short = bathLife({ ...setting, rule: "none" }, [{ ...load, ...partsOf(150, 8) }], {});
  expect(short.loads).toBeGreaterThan(10);
  expect(short.trace.map((point) => point.load)).toEqual(
    Array.from({ length: short.loads }, (_, i) => i + 1),
  );
  expect(bathLife(setting, [load], { tracePoints: 10 }).trace.map((point) => point.load)).toEqual([
    1, 1112, 2223, 3334, 4445, 5556, 6667, 7778, 8889, 10_000,
  ]);
});

test("one part more moves the life of a bath that is not topped up by what one load more evaporates, not by a cliff", () => {
  const falling: BathSetting = { ...setting, rule: "none" };
  const lives = [38, 39, 40, 41, 42, 59, 60, 61].map(
    (parts) => bathLife(falling, [{ ...load, part: { ...load.part, massG: 5 }, parts }], {}).parts,
  );
  expect(Math.max(...lives) / Math.min(...lives)).toBeLessThan(1.5);
});

test("loads shrink with the liquor of a bath that is not topped up, until not one part may be dipped", () => {
  const heavy = { ...load, part: { ...load.part, massG: 60 } };
  const life = bathLife({ ...setting, rule: "none" }, [heavy], {});
  expect(life.endedBy).toBe("too-little-liquor");
  const parts = life.trace.map((point) => point.parts);
  expect(parts[0]).toBe(5 - 1);
  expect(parts.at(-1)).toBe(1);
  // 20 L/kg of a part of 60 g.
  expect(life.trace.at(-1)!.volumeL).toBeGreaterThan(1.2 * 0.98);
});

test("a life ends where the liquor falls under the least that the heater needs", () => {
  const least: BathSetting = { ...setting, rule: "none", tank: { ...setting.tank, leastL: 4.5 } };
  const life = bathLife(least, [load], {});
  expect(life.endedBy).toBe("too-little-liquor");
  expect(life.trace.at(-1)!.volumeL).toBeGreaterThanOrEqual(4.5);
  expect(life.loads).toBeLessThan(bathLife({ ...setting, rule: "none" }, [load], {}).loads);
});

test("a bath that is never topped up and hardly evaporates weakens as the closed form of small loads", () => {
  const small: LoadWork = { ...partsOf(2, 1), ...toDepth(0.5) };
  const dye = { ...setting.dye, uptakePerDm2: 0.06 };
  const life = bathLife(
    { ...setting, dye, rule: "none", heat: steadyHeat(0), cooled: undefined },
    [small],
    {},
  );
  expect(life.loads).toBeGreaterThan(1000);
  for (const { load: count, strength } of life.trace)
    expect(strength).toBeCloseTo(
      spentStrength({
        volumeL: 6,
        dyePerL: 100,
        areaDm2: 2 * (count - 1),
        takenUpPerDm2: 0.06 * 0.5,
        dragOutLPerDm2: 0.0008,
        evaporationLPerDm2: 0,
        refill: "none",
      }),
      3,
    );
});

test("a bath that is too old for another batch is not filled up for it", () => {
  const topped: BathSetting = { ...setting, rule: "strength" };
  const once = bathLife(topped, [load], { everyDays: 7, shelfLifeDays: 3 });
  const bath = bathToWork(setting.fresh, setting.heat.celsius);
  workOn(bath, topped, load);
  expect([once.repeats, once.added, once.dyeLeft]).toEqual([1, bath.topUpDye, bath.dye]);
});
