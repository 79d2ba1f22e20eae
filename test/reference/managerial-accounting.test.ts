import { describe, expect, test } from "vitest";
import { allocate } from "../../src/core/cost/allocate.js";
import { contributionPerPart } from "../../src/core/cost/price/break-even.js";
import { mixBreakEven } from "../../src/core/cost/price/mix-break-even.js";
import { scarceHours } from "../../src/core/cost/price/scarce-hours.js";

describe("break-even of several products", () => {
  /** Mix, prices, variable costs, fixed costs; composite margin, composites, units. Answers of the last three are ours. */
  const cases = [
    [
      "three grades",
      [5, 3, 2],
      [6.25, 7.75, 9.25],
      [3.25, 4.5, 6.25],
      145_000,
      30.75,
      4715.4472,
      [23577, 14146, 9431],
    ],
    ["two products", [3, 1], [10, 9], [4, 5], 220_000, 22, 10_000, [30_000, 10_000]],
    ["7:3:2", [7, 3, 2], [320, 400, 50], [170, 225, 20], 196_200, 1635, 120, [840, 360, 240]],
    ["5:3:2", [5, 3, 2], [50, 40, 30], [30, 15, 10], 258_000, 215, 1200, [6000, 3600, 2400]],
    ["5:4:1", [5, 4, 1], [50, 75, 110], [15, 25, 60], 114_750, 425, 270, [1350, 1080, 270]],
  ] as const;

  test.each(cases)("of %s", (_, mix, price, variable, fixed, margin, composites, units) => {
    // source: managerialAccounting
    const products = mix.map((weight, i) => ({ weight, contribution: price[i]! - variable[i]! }));
    const even = mixBreakEven(products, fixed)!;
    expect(even.compositeContribution).toBeCloseTo(margin, 10);
    expect(even.composites).toBeCloseTo(composites, 4);
    for (const [i, unit] of units.entries()) expect(Math.abs(even.units[i]! - unit)).toBeLessThanOrEqual(1);
  });

  test("of a basket of four leaves 3.50", () => {
    // source: managerialAccounting
    const products = [
      [5, 0.6 - 0.25],
      [3, 1 - 0.75],
      [2, 0.8 - 0.5],
      [1, 1.9 - 1.5],
    ].map(([weight, contribution]) => ({ weight: weight!, contribution: contribution! }));
    expect(mixBreakEven(products, 7)!.compositeContribution).toBeCloseTo(3.5, 12);
  });
});

describe("one scarce resource", () => {
  test("80,000 machine hours go to the first and third product before the second", () => {
    // source: managerialAccounting; the third margin is printed as 48 and follows as 45 from its data
    const margins = [350 - 40 - 70 - 55, 200 - 30 - 65 - 50, 175 - 35 - 50 - 45];
    const [hours, demand] = [
      [1, 0.5, 0.25],
      [60_000, 48_000, 40_000],
    ];
    const best = scarceHours(
      margins.map((contribution, i) => ({ contribution, hours: hours[i]!, demand: demand[i]! })),
      80_000,
    )!;
    expect(margins).toEqual([185, 55, 45]);
    expect(best.perHour).toEqual([185, 110, 180]);
    expect(best.make).toEqual([60_000, 20_000, 40_000]);
    expect(best.nextHour).toBe(110);
  });

  test("set-ups as the scarce resource: 18 against 17 each", () => {
    // source: managerialAccounting; answer ours
    const batches = [
      { contribution: 450, hours: 25 },
      { contribution: 340, hours: 20 },
    ];
    const best = scarceHours(batches, 12_000)!;
    expect(best.perHour).toEqual([18, 17]);
    expect(best.contribution).toBe(216_000);
    expect(scarceHours(batches.slice(1), 12_000)!.contribution).toBe(204_000);
  });

  test("what must be made comes first, and 100 hours more bring 8000", () => {
    // source: managerialAccounting; answer ours
    const products = [
      { contribution: 16, hours: 0.25, least: 3000 },
      { contribution: 32, hours: 0.4, least: 3000 },
    ];
    const best = scarceHours(products, 4800)!;
    expect(best.make[0]).toBe(3000);
    expect(best.make[1]).toBeCloseTo(10_125, 6);
    expect(best.contribution).toBeCloseTo(372_000, 6);
    expect(100 * best.nextHour).toBeCloseTo(8000, 9);
    expect(scarceHours(products, 4900)!.contribution - best.contribution).toBeCloseTo(8000, 6);
    expect(scarceHours(products, 1949)).toBeUndefined();
  });

  test.each([
    [[6, 2], [0.1, 0.04], 6000, 800, [60, 50], [6000, 5000], 46_000, 50],
    [[15, 4], [0.1, 0.0333333], 30_000, 4000, [150, 120], [30_000, 30_000], 570_000, 0],
  ] as const)(
    "two kinds of balls, margins %j",
    (margin, hours, demand, capacity, perHour, make, total, nextHour) => {
      // source: managerialAccounting; answers ours
      const best = scarceHours(
        margin.map((contribution, i) => ({ contribution, hours: hours[i]!, demand })),
        capacity,
      )!;
      for (const i of [0, 1]) {
        expect(best.perHour[i]! / perHour[i]!).toBeCloseTo(1, 5);
        expect(best.make[i]! / make[i]!).toBeCloseTo(1, 6);
      }
      expect(best.contribution / total).toBeCloseTo(1, 6);
      expect(best.nextHour).toBeCloseTo(nextHour, 6);
    },
  );
});

describe("cost pools over products by their drivers", () => {
  /** Every pool shared out by the driver of the same place, each product's shares of all pools added up. */
  const overheadOf = (pools: readonly number[], drivers: readonly (readonly number[])[]): number[] =>
    allocate(
      pools.map((amount, i) => ({
        line: "labour",
        what: "overhead",
        amount,
        shares: drivers[i]!.map((weight, order) => ({ order, weight })),
      })),
      drivers[0]!.length,
    ).map(({ labour }) => labour);

  test("five pools over three products give 22.50, 16.90 and 17.70 a unit", () => {
    // source: managerialAccounting
    const overhead = overheadOf(
      [200_000, 500_000, 300_000, 600_000, 900_000],
      [
        [2000, 1500, 1500],
        [5000, 4000, 1000],
        [10_000, 9000, 1000],
        [15_000, 3000, 12_000],
        [80_000, 60_000, 10_000],
      ],
    );
    for (const [i, amount] of [1_260_000, 815_000, 425_000].entries())
      expect(overhead[i]).toBeCloseTo(amount, 6);
    const units = [140_000, 100_000, 250_000];
    const direct = [3.5 + 10, 6 + 2.75, 11.7 + 4.3];
    const perUnit = overhead.map((amount, i) => amount / units[i]! + direct[i]!);
    for (const [i, cost] of [22.5, 16.9, 17.7].entries()) expect(perUnit[i]).toBeCloseTo(cost, 9);
  });

  test.each([
    ["labour hours alone", [300_000], [[150_000, 50_000]], [225_000, 75_000]],
    [
      "machine hours and set-ups",
      [200_000, 100_000],
      [
        [4000, 1000],
        [1000, 1500],
      ],
      [200_000, 100_000],
    ],
    [
      "set-ups, parts and machine hours",
      [128_000, 105_000, 150_000],
      [
        [5000, 3000],
        [25_000, 45_000],
        [12_500, 37_500],
      ],
      [155_000, 228_000],
    ],
  ] as const)("by %s", (_, pools, drivers, overhead) => {
    // source: managerialAccounting; answers ours
    for (const [i, amount] of overheadOf(pools, drivers).entries())
      expect(amount).toBeCloseTo(overhead[i]!, 6);
  });
});

describe("an extra worker", () => {
  test.each([
    [56_000, 8000, 16, [4.5, 2.1, 1.45], 7600],
    [67_000, 9000, 20, [5.5, 3.1, 2.45], 13_550],
  ])(
    "for %d a year who makes %d more at %d brings what they leave, less the pay",
    (pay, units, price, variable, gain) => {
      // source: managerialAccounting; answers ours; fixed costs a unit stay out
      const left = contributionPerPart(
        { netPrice: price, fees: 0 },
        variable.reduce((sum, one) => sum + one, 0),
      );
      expect(units * left - pay).toBeCloseTo(gain, 6);
    },
  );
});
