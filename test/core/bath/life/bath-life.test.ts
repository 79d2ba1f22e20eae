import fc from "fast-check";
import { expect, test } from "vitest";
import { spentStrength } from "../../../../src/core/bath/evidence/spent-strength.js";
import {
  bathLife,
  type LifeEnd,
  type LifeLoad,
  lifeLoadLimit,
} from "../../../../src/core/bath/life/bath-life.js";
import { type BathSetting, workLoad } from "../../../../src/core/bath/load/work-load.js";
import { baths, setting, toDepth } from "../settings.js";

/** The life load by load, without any short cut. */
function plainLife(
  { handling, fresh, ...rest }: BathSetting,
  mix: readonly LifeLoad[],
  age: { everyDays?: number; shelfLifeDays?: number },
) {
  let state = fresh;
  const seen: { strength: number; volumeL: number; dipSeconds: number }[] = [];
  const sums = { loads: 0, parts: 0, areaDm2: 0, takenUp: 0, draggedOut: 0, added: 0, waterMl: 0 };
  const end = (endedBy: LifeEnd, repeats: number) => ({
    ...sums,
    endedBy,
    repeats,
    dyeLeft: state.dye,
    seen,
  });
  for (let repeat = 0; ; repeat++) {
    if (repeat * (age.everyDays ?? 0) > (age.shelfLifeDays ?? Number.POSITIVE_INFINITY))
      return end("shelf-life", repeat);
    for (const load of mix) {
      if (sums.loads === lifeLoadLimit) return end("load-limit", repeat);
      if (1000 * state.volumeL < 0.98 * handling.liquorRatioLPerKg * load.massG * (1 - 1e-9))
        return end("too-little-liquor", repeat);
      const result = workLoad({ handling, fresh, ...rest }, state, load);
      if (result === undefined) return end("too-little-dye", repeat);
      if (result.seconds > handling.longestSeconds) return end("longest-dip", repeat);
      seen.push({ strength: result.strengthBefore, volumeL: state.volumeL, dipSeconds: result.seconds });
      state = result.after;
      sums.loads += 1;
      sums.parts += load.parts;
      sums.areaDm2 += load.areaDm2;
      sums.takenUp += result.takenUp;
      sums.draggedOut += result.draggedOut;
      sums.added += result.topUp?.dye ?? 0;
      sums.waterMl += result.topUp?.waterMl ?? 0;
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
      for (const { load, loadOfMix, ...point } of life.trace) {
        expect(loadOfMix).toBe(((load - 1) % mix.length) + 1);
        for (const key of ["strength", "volumeL", "dipSeconds"] as const)
          expect(Math.abs(point[key] - plain.seen[load - 1]![key])).toBeLessThanOrEqual(
            1e-12 * Math.max(1, plain.seen[load - 1]![key]),
          );
      }
    }),
    { numRuns: 150, seed: 6 },
  );
  // Long, short and aged lives were all among them.
  expect(rounds).toBeGreaterThan(20);
  for (const end of ["too-little-dye", "shelf-life", "load-limit"] as const)
    expect(ended.get(end)).toBeGreaterThan(20);
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

const load: LifeLoad = { areaDm2: 10, ...toDepth(0.5), parts: 8, massG: 60 };

test("a life lasts in days as long as its finished repetitions take, or as the dye keeps", () => {
  const spent = bathLife({ ...setting, rule: "none" }, [load], { everyDays: 3 });
  expect(spent.endedBy).toBe("too-little-liquor");
  expect(spent.days).toBe(3 * spent.repeats);
  const aged = bathLife(setting, [load], { everyDays: 7, shelfLifeDays: 30 });
  // On days 0, 7, 14, 21 and 28.
  expect([aged.endedBy, aged.repeats, aged.days]).toEqual(["shelf-life", 5, 30]);
  expect(bathLife(setting, [load], {}).days).toBeNull();
});

test("a bath kept at strength for ever has a trace of at most 60 points from the first load to the last", () => {
  const life = bathLife(setting, [load, { ...load, ...toDepth(0.2) }, { ...load, areaDm2: 4 }], {});
  expect(life.endedBy).toBe("load-limit");
  expect(life.trace).toHaveLength(60 - 2);
  expect(life.trace.slice(0, 3).map((point) => point.load)).toEqual([1, 2, 3]);
  expect(life.trace.at(-1)).toMatchObject({ load: 10_000, loadOfMix: 1 });
});

test("the trace of a short life is every load, and of a mix longer than the trace single loads", () => {
  const short = bathLife({ ...setting, rule: "none" }, [{ ...load, areaDm2: 150 }], {});
  expect(short.loads).toBeGreaterThan(10);
  expect(short.trace.map((point) => point.load)).toEqual(
    Array.from({ length: short.loads }, (_, i) => i + 1),
  );
  const long = bathLife(
    setting,
    Array.from({ length: 25 }, () => load),
    { tracePoints: 10 },
  );
  expect(long.trace.map((point) => point.load)).toEqual([
    1, 1112, 2223, 3334, 4445, 5556, 6667, 7778, 8889, 10_000,
  ]);
});

test("a bath that is never topped up and hardly evaporates weakens as the closed form of small loads", () => {
  const small: LifeLoad = { areaDm2: 2, ...toDepth(0.5), parts: 1, massG: 6 };
  const dye = { ...setting.dye, uptakePerDm2: 0.06 };
  const life = bathLife({ ...setting, dye, rule: "none", evaporationLPerSecond: 0 }, [small], {});
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
