import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Evaluated, percentilesOf, spread } from "../../../../src/core/cost/spread/spread.js";
import type { UncertainInput } from "../../../../src/core/cost/spread/uncertain-input.js";
import { normalQuantile } from "../../../../src/core/maths/sampling/normal-quantile.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { spreadOutputs } from "../../../../src/core/plan/results/spread-outputs.js";
import { batch } from "../../plan/sample.js";

const input = (name: string, value: number, halfWidth: number): UncertainInput => ({
  path: [name],
  value,
  halfWidth,
  assumed: false,
});
const factored = (name: string, value: number, factor: number): UncertainInput => ({
  path: [name],
  value,
  factor,
  assumed: true,
});
const deviations = normalQuantile(0.975);
const one = (cost: number): Evaluated<"twice"> => ({ cost, outputs: { twice: [2 * cost] } });

describe("spread", () => {
  // A sum of independent normal values is normal: its variances add up.
  const inputs = [
    input("labour", 34, 3 * deviations),
    input("dye", 46, 4 * deviations),
    input("idle", 10, 1),
  ];
  const sum = (values: readonly number[]) => one(values[0]! + values[1]!);

  test("finds the quantiles of a sum of two normal inputs within 1 %", () => {
    const { cost, outputs } = spread(inputs, sum);
    const tenth = 5 * normalQuantile(0.9);
    for (const [found, expected] of [
      [cost!.p10, 80 - tenth],
      [cost!.p50, 80],
      [cost!.p90, 80 + tenth],
    ] as const)
      expect(Math.abs(found / expected - 1)).toBeLessThan(0.01);
    expect(outputs.twice).toEqual([{ p10: 2 * cost!.p10, p50: 2 * cost!.p50, p90: 2 * cost!.p90 }]);
  });

  // Rank correlation of normal values that correlate by r: 6/π arcsin(r/2); here r is 4/5, 3/5 and 0.
  test("ranks inputs by the share of the ranks' variance that is theirs", () => {
    const { ranking } = spread(inputs, sum);
    expect(ranking.map(({ path }) => path[0])).toEqual(["dye", "labour", "idle"]);
    expect(Math.abs(ranking[0]!.share - ((6 / Math.PI) * Math.asin(0.4)) ** 2)).toBeLessThan(0.01);
    expect(Math.abs(ranking[1]!.share - ((6 / Math.PI) * Math.asin(0.3)) ** 2)).toBeLessThan(0.01);
    expect(ranking[2]!.share).toBeLessThan(0.001);
  });

  test("says by how much the cost rises from the P10 to the P90 of an input, and falls", () => {
    const { ranking } = spread(inputs.slice(0, 2), ([labour, dye]) => one(2 * labour! - 3 * dye!));
    const width = 2 * normalQuantile(0.9);
    const [dye, labour] = ranking;
    expect(dye!.swing / (-3 * 4 * width)).toBeCloseTo(1, 2);
    expect(labour!.swing / (2 * 3 * width)).toBeCloseTo(1, 2);
  });

  test("gives the same result for the same seed and another for another", () => {
    expect(spread(inputs, sum)).toEqual(spread(inputs, sum));
    expect(spread(inputs, sum, { seed: 2 }).cost).not.toEqual(spread(inputs, sum).cost);
  });

  test("counts draws that fail and leaves them out", () => {
    const result = spread([input("x", 10, 2)], ([x]) => (x! > 10 ? undefined : one(x!)));
    expect(result.failed).toBe(500);
    expect(result.cost!.p90).toBeLessThan(10);
    expect(result.ranking[0]!.share).toBeCloseTo(1, 9);
  });

  test("gives nothing but the count where every draw fails", () => {
    expect(spread([input("x", 10, 2)], () => undefined, { draws: 10 })).toEqual({
      draws: 10,
      seed: 1,
      failed: 10,
      cost: null,
      outputs: {},
      ranking: [{ path: ["x"], assumed: false, share: 0, swing: 0 }],
    });
  });

  test("gives equal percentiles and an empty ranking where nothing is uncertain", () => {
    const result = spread([], () => one(7), { draws: 20 });
    expect(result.cost).toEqual({ p10: 7, p50: 7, p90: 7 });
    expect(result.ranking).toEqual([]);
  });

  test("gives a figure that only some draws know, and null for one that no draw knows", () => {
    const result = spread(
      [input("x", 10, 2)],
      ([x]) => ({ cost: null, outputs: { dip: [x! > 10 ? x! : null, null] } }),
      { draws: 100 },
    );
    expect(result.outputs.dip[0]!.p10).toBeGreaterThan(10);
    expect(result.outputs.dip[1]).toBeNull();
    expect(result.cost).toBeNull();
    expect(result.ranking[0]!.share).toBe(0);
  });
});

/** What is drawn for one input. */
function drawsOf(input: UncertainInput, seed: number, draws = 1000): number[] {
  const drawn: number[] = [];
  spread(
    [input],
    ([x]) => {
      drawn.push(x!);
      return one(x!);
    },
    { seed, draws },
  );
  return drawn.sort((a, b) => a - b);
}
const shareWithin = (drawn: readonly number[], low: number, high: number): number =>
  drawn.filter((x) => low <= x && x <= high).length / drawn.length;
const seeds = fc.integer({ min: 0, max: 1e6 });

describe("the draws of spread", () => {
  const value = fc.double({ min: 1e-3, max: 1e3, noNaN: true });

  test("of an assumed figure have it as median, and 95 % of them lie within its factor", () => {
    fc.assert(
      fc.property(value, fc.double({ min: 1.2, max: 6, noNaN: true }), seeds, (middle, factor, seed) => {
        const drawn = drawsOf(factored("x", middle, factor), seed);
        // Draw 500 of 1000 lies within a thousandth of the distribution under its middle.
        expect(Math.log(drawn[499]! / middle)).toBeGreaterThan(-0.003 * Math.log(factor));
        expect(Math.log(drawn[499]! / middle)).toBeLessThanOrEqual(0);
        expect(drawn[500]! / middle).toBeGreaterThanOrEqual(1);
        expect(shareWithin(drawn, middle / factor, middle * factor)).toBeCloseTo(0.95, 2);
        // As many on either side by ratio, not by difference.
        expect(shareWithin(drawn, 0, middle / factor)).toBeCloseTo(0.025, 2);
        expect(drawn[0]).toBeGreaterThan(0);
      }),
      { numRuns: 30 },
    );
  });

  test("of a figure with ± are normal: the middle is median and mean, and 95 % lie within the half width", () => {
    fc.assert(
      fc.property(value, fc.double({ min: 0.01, max: 0.4, noNaN: true }), seeds, (middle, relative, seed) => {
        const halfWidth = relative * middle;
        const drawn = drawsOf(input("x", middle, halfWidth), seed);
        const mean = drawn.reduce((sum, x) => sum + x, 0) / drawn.length;
        expect(Math.abs(mean - middle)).toBeLessThan(0.003 * halfWidth);
        expect(Math.abs((drawn[499]! + drawn[500]!) / 2 - middle)).toBeLessThan(0.003 * halfWidth);
        expect(shareWithin(drawn, middle - halfWidth, middle + halfWidth)).toBeCloseTo(0.95, 2);
      }),
      { numRuns: 30 },
    );
  });
});

describe("percentilesOf", () => {
  test("takes 11, 51 and 91 out of 1 to 101 in any order", () => {
    const values = Array.from({ length: 101 }, (_, i) => ((i * 37) % 101) + 1);
    expect(percentilesOf(values)).toEqual({ p10: 11, p50: 51, p90: 91 });
  });
});

describe("spread over planBatch", () => {
  const uncertain: UncertainInput[] = [
    { path: ["dyes", "coral", "uptake"], value: 0.03, factor: 4, assumed: true },
    { path: ["handling", "dragOut"], value: 0.8, factor: 3, assumed: true },
    { path: ["rates", "labour"], value: 34, halfWidth: 4, assumed: false },
  ];
  const evaluate = ([uptake, dragOut, labour]: readonly number[]) => {
    const dye = { ...batch.dyes[0]!, uptakePerDm2: uptake! };
    const plan = planBatch({
      ...batch,
      rates: { ...batch.rates, labourPerHour: labour! },
      handling: { ...batch.handling, dragOutMlPerDm2: dragOut! },
      dyes: [dye],
      baths: batch.baths.map((bath) => ({ ...bath, dye })),
      orders: batch.orders.map((order) => ({ ...order, shade: { ...order.shade!, dye } })),
    });
    return plan.ok ? spreadOutputs(plan.value) : undefined;
  };

  test("holds the plain plan's costs, dips and lives between the lowest and the highest of the draws", () => {
    const plan = planBatch(batch);
    if (!plan.ok) throw new Error("no plan");
    const { outputs, cost } = spread(uncertain, evaluate, { draws: 60 });
    expect(outputs.costPerPart).toHaveLength(2);
    plan.value.orders.forEach((order, i) => {
      expect(outputs.costPerPart[i]!.p10).toBeLessThan(order.costPerPart!);
      expect(outputs.costPerPart[i]!.p90).toBeGreaterThan(order.costPerPart!);
    });
    expect(cost!.p10).toBeLessThan(plan.value.totals.cost!);
    expect(outputs.lifeParts[0]!.p10).toBeLessThanOrEqual(outputs.lifeParts[0]!.p90);
    // The light order is dipped first: all its loads lie close to 30 s, in a bath near full strength.
    expect(outputs.dipSeconds[1]!.p50).toBeGreaterThan(29);
    expect(outputs.dipSeconds[1]!.p50).toBeLessThan(33);
  });

  test("finds labour to move the cost of this batch the most", () => {
    const { ranking } = spread(uncertain, evaluate, { draws: 60 });
    expect(ranking[0]!.path).toEqual(["rates", "labour"]);
    expect(ranking[0]!.swing).toBeGreaterThan(0);
  });
});
