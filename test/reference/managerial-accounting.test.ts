import { describe, expect, test } from "vitest";
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
