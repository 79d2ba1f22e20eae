import { describe, expect, test } from "vitest";
import type { Batch, Dye, Shade } from "../../../src/core/model/batch.js";
import { planBatch } from "../../../src/core/plan/plan.js";
import { batchWear } from "../../../src/core/plan/wear.js";
import type { BatchWear, BathWear } from "../../../src/core/plan/wear-model.js";
import { passedForKnown } from "./figures.js";
import { batch, bath, dye, order, tray } from "./sample.js";

const wearOf = (input: Batch): BatchWear => {
  const wear = batchWear(input);
  if (!wear.ok) throw new Error(JSON.stringify(wear.faults));
  return wear.value;
};
const bathOf = (input: Batch): BathWear => wearOf(input).baths[0]!;
const sample = bathOf(batch);

/** The sample with another dye in its bath and orders. */
const withDye = (changed: Dye, everyDays = 1): Batch => ({
  ...batch,
  dyes: [changed],
  baths: [{ ...bath, dye: changed, everyDays }],
  orders: batch.orders.map((one) => ({ ...one, shade: { ...one.shade!, dye: changed } })),
});
const withHandling = (changed: Partial<Batch["handling"]>): Batch => ({
  ...batch,
  handling: { ...batch.handling, ...changed },
});

describe("lives", () => {
  test("cost dye, water, disposal, and the labour of loads, dips and waits", () => {
    // No bath is so cold that a load waits.
    for (const life of bathOf(withHandling({ belowKelvin: 60 })).lives) {
      const { parts, areaDm2, dipSeconds, loads } = life;
      const concentrate = (life as { concentrateMlPerDm2: number }).concentrateMlPerDm2 * areaDm2;
      const water = (life.bathCostPerPart! * parts - (46 * concentrate) / 1000 - 0.6 * 6) / 4.2;
      // Racking, draining, rinsing and unloading take 15, 15, 30 and 10 s a load, whatever the rule.
      expect(life.dipLabourPerPart! * parts).toBeCloseTo((34 * (dipSeconds + 70 * loads)) / 3600, 9);
      expect(life.cost).toBeCloseTo((life.bathCostPerPart! + life.dipLabourPerPart!) * parts, 9);
      expect(life.costPerPart).toBeCloseTo(life.cost! / parts, 12);
      // At least the make-up's water, at most all that could have boiled off besides.
      expect(water).toBeGreaterThan(0.005);
      expect(water).toBeLessThan(0.5);
    }
  });

  test("the cheapest rule is the one of least cost per part, and labour can decide it", () => {
    const ruleAt = (labourPerHour: number, price: number): string | null => {
      const { lives, cheapestRule } = bathOf({
        ...withDye({ ...dye, price }, 7),
        rates: { ...batch.rates, labourPerHour },
      });
      const least = lives.reduce((best, life) => (life.costPerPart! < best.costPerPart! ? life : best));
      if (cheapestRule !== null) expect(cheapestRule).toBe(least.rule);
      return cheapestRule;
    };
    const rules = [ruleAt(0, 46), ruleAt(500, 1)];
    expect(rules).not.toContain(null);
    expect(rules[0]).not.toBe(rules[1]);
  });

  test("have a cheapest rule where it is 1 % under the next one, and none where it is less", () => {
    const at = (labourPerHour: number): BathWear =>
      bathOf({ ...withDye({ ...dye, shelfLifeDays: 60 }, 7), rates: { ...batch.rates, labourPerHour } });
    const costs = (labourPerHour: number): number[] =>
      at(labourPerHour).lives.map(({ costPerPart }) => costPerPart!);
    const [free, paid] = [costs(0), costs(1000)];
    // Costs grow evenly with the rate: where the one of "none" is so much of that of "level".
    const rateWhere = (share: number): number => {
      const [none, level] = [free[0]! - share * free[1]!, paid[0]! - share * paid[1]!];
      return (-1000 * none) / (level - none);
    };
    const [cheaper, dearer] = [rateWhere(0.99), rateWhere(1 / 0.99)];
    expect([cheaper, dearer].map((rate) => rate > 1 && rate < 999)).toEqual([true, true]);
    const rules = [cheaper - 0.1, cheaper + 0.1, dearer - 0.1, dearer + 0.1].map(
      (rate) => at(rate).cheapestRule,
    );
    expect(rules).toEqual(["none", null, null, "level"]);
  });

  test("have no days where it is not known how often the batch is repeated", () => {
    const { everyDays: _, ...once } = bath;
    expect(bathOf({ ...batch, baths: [once] }).lives.map(({ days }) => days)).toEqual([null, null, null]);
    expect(sample.lives[0]!.days).toBeGreaterThan(0);
  });

  test("are traced under the bath's own rule, each load with the portion that it is of", () => {
    const { trace, portions, lives, topUpRule } = sample;
    const own = lives.find(({ rule }) => rule === topUpRule)!;
    expect(portions).toEqual([
      { part: "hook", shade: "light", base: null, parts: 100, freshDipSeconds: 30 },
      { part: "tray", shade: "deep", base: null, parts: 21, freshDipSeconds: 120 },
    ]);
    expect(trace[0]).toMatchObject({ load: 1, portion: 1, strength: 1, volumeL: 6, celsius: 80 });
    expect(trace.at(-1)!.load).toBe(own.loads);
    expect(trace.length).toBe(Math.min(60, own.loads));
    expect(new Set(trace.map(({ portion }) => portion))).toEqual(new Set([1, 2]));
  });

  test("are those of a plan under the bath's own rule", () => {
    const plan = planBatch(batch);
    if (!plan.ok) throw new Error("no plan");
    expect(sample.lives).toContainEqual(plan.value.baths[0]!.life);
    expect(sample.dyeBalance).toEqual(plan.value.baths[0]!.dyeBalance);
    expect(sample.energyBalance).toEqual(plan.value.baths[0]!.energyBalance);
  });
});

describe("the bath of a batch", () => {
  test("loses its dye in shares of the dye balance that add up to 1", () => {
    const { dyeFate, dyeBalance } = sample;
    const { startMl, addedMl, takenUpMl } = dyeBalance as {
      startMl: number;
      addedMl: number;
      takenUpMl: number;
    };
    expect(dyeFate.onPartsShare).toBeCloseTo(takenUpMl / (startMl + addedMl), 12);
    expect(dyeFate.onPartsShare + dyeFate.rinsedShare + dyeFate.leftShare).toBeCloseTo(1, 12);
  });

  test("is held by a steady top-up that for a single kind of load is (u + c V_drag)/(V_evap + V_drag)", () => {
    const single = { ...batch, yield: 1, orders: [order(0, tray, batch.shades[1]!, 9)] };
    const { steadyTopUp } = bathOf(single);
    const plan = planBatch(single);
    if (!plan.ok) throw new Error("no plan");
    const [only] = plan.value.baths;
    const [load] = only!.loads;
    const u = dye.uptakePerDm2 * load!.areaDm2 * load!.depth;
    const made = only!.makeUp as { concentrateMl: number; volumeHotL: number };
    const drained = (batch.handling.dragOutMlPerDm2 * load!.areaDm2) / 1000;
    const c = (made.concentrateMl - u) / made.volumeHotL;
    const top = (u + c * drained) / (load!.evaporatedL + drained);
    expect(steadyTopUp!.strength).toBeCloseTo(top / (made.concentrateMl / made.volumeHotL), 9);
    const [pour] = steadyTopUp!.pours as unknown as [
      { concentrateMl: number; waterMl: number; liquorMl: number },
    ];
    expect(steadyTopUp!.mlPerLoad).toBe(pour.liquorMl);
    expect(pour.concentrateMl + pour.waterMl).toBeCloseTo(pour.liquorMl, 9);
    expect(pour.concentrateMl / pour.liquorMl).toBeCloseTo(
      (steadyTopUp as unknown as { fraction: number }).fraction,
      12,
    );
  });

  test("has a steady top-up a load that is the mean of its pours", () => {
    const { pours, mlPerLoad } = sample.steadyTopUp!;
    expect(pours.length).toBeGreaterThan(2);
    expect(mlPerLoad).toBeCloseTo(pours.reduce((sum, { liquorMl }) => sum + liquorMl, 0) / pours.length, 9);
  });

  test("gains by a longer drain an estimate with two ends, and nothing where parts drain for 40 s or dip under a minute", () => {
    const deep = { ...batch, orders: [order(0, tray, batch.shades[1]!, 9)] };
    const drain = bathOf(deep).longerDrain!;
    expect([drain.estimate, drain.fromSeconds, drain.toSeconds]).toEqual([true, 15, 25]);
    expect(drain.dyePerLoad.high).toBeGreaterThan(drain.dyePerLoad.low);
    expect(drain.savedPerLoad!.high).toBeCloseTo((46 * drain.dyePerLoad.high) / 1000, 12);
    expect(drain.labourPerLoad).toBeCloseTo((34 * 10) / 3600, 12);
    const long = { ...deep, handling: { ...batch.handling, drainSeconds: 40 } };
    expect(bathOf(long).longerDrain).toBeNull();
    expect(sample.longerDrain).toBeNull();
  });

  test("gains by a longer drain where the shortest dip is 60 s or more", () => {
    const dippedFor = (seconds: number): Batch => {
      const shade: Shade = { ...batch.shades[1]!, target: { kind: "time", seconds } };
      return { ...batch, yield: 1, orders: [order(0, tray, shade, 4)] };
    };
    const dipOf = (seconds: number): number => {
      const plan = planBatch(dippedFor(seconds));
      if (!plan.ok) throw new Error("no plan");
      expect(plan.value.baths[0]!.loads).toHaveLength(1);
      return plan.value.baths[0]!.loads[0]!.dipSeconds;
    };
    // The one dip is a little longer than in a fresh bath: the fresh times around which it is 60 s.
    const near = (60 * 60) / dipOf(60);
    const [under, over] = [near - 0.1, near + 0.1];
    expect([59.8, dipOf(under), 60, dipOf(over), 60.2]).toEqual(
      [59.8, dipOf(under), 60, dipOf(over), 60.2].sort((a, b) => a - b),
    );
    expect(bathOf(dippedFor(under)).longerDrain).toBeNull();
    expect(bathOf(dippedFor(over)).longerDrain).not.toBeNull();
  });

  test("warms up until it is hot, and other covers change what holds it", () => {
    const { heat, heating } = sample;
    const { warmUp, minutes, lidOff, lidOn, otherCovers } = heat;
    expect(warmUp.at(-1)).toEqual({ minutes: expect.closeTo(minutes!, 6), celsius: 80 });
    expect([heat.cover, minutes, lidOff.powerW]).toEqual([
      "lid",
      expect.closeTo(heating.minutes!, 1),
      expect.closeTo(heating.holdingW, 9),
    ]);
    expect(lidOn.evaporationKgPerH).toBeCloseTo(0.2 * lidOff.evaporationKgPerH, 9);
    expect(otherCovers.map(({ cover }) => cover)).toEqual(["none", "balls"]);
    expect(otherCovers[0]!.minutes!).toBeGreaterThan(minutes!);
  });

  for (const what of ["uptake", "dragOut"] as const)
    test(`has no number that moves with an assumed ${what} and is not marked as resting on it`, () => {
      const [a, b] = [0.03, 0.05].map((value) =>
        wearOf(
          what === "uptake"
            ? withDye({ ...dye, uptakePerDm2: value, uptakeAssumed: true })
            : withHandling({ dragOutMlPerDm2: 20 * value, dragOutAssumed: true }),
        ),
      );
      const { moved, unmarked } = passedForKnown(a!, b!, what);
      expect(unmarked).toEqual([]);
      expect(moved).toBeGreaterThan(50);
    });
});
