import { describe, expect, test } from "vitest";
import type { Batch } from "../../../../src/core/model/batch.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import type { Plan } from "../../../../src/core/plan/plan-model.js";
import { batch, bath, dye, order, tray } from "../sample.js";

const planOf = (input: Batch): Plan => {
  const plan = planBatch(input);
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  return plan.value;
};
const [sample] = planOf(batch).baths;

describe("planBatch, lives", () => {
  test("cost over a life is its dye, water, disposal and the labour of its dips", () => {
    for (const life of sample!.lives) {
      const { parts, areaDm2, dipSeconds } = life;
      const concentrate = (life as { concentrateMlPerDm2: number }).concentrateMlPerDm2 * areaDm2;
      const water = (life.bathCostPerPart! * parts - (46 * concentrate) / 1000 - 0.6 * 6) / 4.2;
      expect(life.cost).toBeCloseTo(life.bathCostPerPart! * parts + (34 * dipSeconds) / 3600, 9);
      expect(life.costPerPart).toBeCloseTo(life.cost! / parts, 12);
      // At least the make-up's water, at most all that could have boiled off besides.
      expect(water).toBeGreaterThan(0.005);
      expect(water).toBeLessThan(0.5);
    }
  });

  test("the cheapest rule is the one of least cost per part, and labour can decide it", () => {
    const least = (plan: Plan) =>
      plan.baths[0]!.lives.reduce((best, life) => (life.costPerPart! < best.costPerPart! ? life : best)).rule;
    const ruleAt = (labourPerHour: number, price: number): string | null => {
      const priced = { ...dye, price };
      const plan = planOf({
        ...batch,
        rates: { ...batch.rates, labourPerHour },
        dyes: [priced],
        baths: [{ ...bath, dye: priced, everyDays: 7 }],
        orders: batch.orders.map((one) => ({ ...one, shade: { ...one.shade, dye: priced } })),
      });
      expect(plan.baths[0]!.cheapestRule).toBe(least(plan));
      return plan.baths[0]!.cheapestRule;
    };
    expect(ruleAt(0, 46)).not.toBe(ruleAt(500, 1));
  });

  test("days are null where it is not known how often the batch is repeated", () => {
    const { everyDays: _, ...once } = bath;
    expect(planOf({ ...batch, baths: [once] }).baths[0]!.life.days).toBeNull();
    expect(sample!.life.days).toBeGreaterThan(0);
  });
});

describe("planBatch, advice", () => {
  test("where the dye goes are shares of the dye balance that add up to 1", () => {
    const { dyeFate, dyeBalance } = sample!;
    const { startMl, addedMl, takenUpMl } = dyeBalance as {
      startMl: number;
      addedMl: number;
      takenUpMl: number;
    };
    expect(dyeFate!.onParts).toBeCloseTo(takenUpMl / (startMl + addedMl), 12);
    expect(dyeFate!.onParts + dyeFate!.rinsedAway + dyeFate!.left).toBeCloseTo(1, 12);
  });

  test("the steady top-up of a single kind of load is (u + c V_drag)/(V_evap + V_drag)", () => {
    const only = planOf({ ...batch, yield: 1, orders: [order(0, tray, batch.shades[1]!, 9)] }).baths[0]!;
    const [load] = only.loads;
    const u = dye.uptakePerDm2 * load!.areaDm2 * load!.depth;
    const made = only.makeUp as { concentrateMl: number; volumeHotL: number };
    const drained = (batch.handling.dragOutMlPerDm2 * load!.areaDm2) / 1000;
    const c = (made.concentrateMl - u) / made.volumeHotL;
    const top = (u + c * drained) / (load!.evaporatedL + drained);
    expect(only.steadyTopUp!.strength).toBeCloseTo(top / (made.concentrateMl / made.volumeHotL), 9);
    const [pour] = only.steadyTopUp!.pours as unknown as [
      { concentrateMl: number; waterMl: number; liquorMl: number },
    ];
    expect(pour.concentrateMl + pour.waterMl).toBeCloseTo(pour.liquorMl, 9);
    expect(pour.concentrateMl / pour.liquorMl).toBeCloseTo(
      (only.steadyTopUp as unknown as { fraction: number }).fraction,
      12,
    );
  });

  test("draining longer is an estimate with two ends, and nothing where parts drain for 40 s already", () => {
    const drain = sample!.longerDrain!;
    expect([drain.estimate, drain.fromSeconds, drain.toSeconds]).toEqual([true, 15, 25]);
    expect(drain.dyePerLoad.high).toBeGreaterThan(drain.dyePerLoad.low);
    expect(drain.savedPerLoad!.high).toBeCloseTo((46 * drain.dyePerLoad.high) / 1000, 12);
    expect(drain.labourPerLoad).toBeCloseTo((34 * 10) / 3600, 12);
    const long = planOf({ ...batch, handling: { ...batch.handling, drainSeconds: 40 } });
    expect(long.baths[0]!.longerDrain).toBeNull();
  });

  test("heating has the way up, ending when the bath is hot, and what a lid changes", () => {
    const { warmUp, minutes, lidOff, lidOn, otherCovers, holdingW } = sample!.heating;
    expect(warmUp!.at(-1)).toEqual({ minutes: expect.closeTo(minutes!, 6), celsius: 80 });
    expect(lidOff!.powerW).toBeCloseTo(holdingW, 9);
    expect(lidOn!.evaporationKgPerH).toBeCloseTo(0.2 * lidOff!.evaporationKgPerH, 9);
    expect(otherCovers!.map(({ cover }) => cover)).toEqual(["none", "balls"]);
    expect(otherCovers![0]!.minutes!).toBeGreaterThan(minutes!);
  });
});
