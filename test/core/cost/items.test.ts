import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { allocate, sheetOf } from "../../../src/core/cost/allocate.js";
import { bathItems, type CostItem, lifeShare } from "../../../src/core/cost/items.js";
import { costLines } from "../../../src/core/cost/line/cost-lines.js";
import { sheetTotal } from "../../../src/core/cost/line/cost-sheet.js";
import { batch, bath } from "../plan/sample.js";

const amountOf = (items: readonly CostItem[], what: string): number =>
  items.find((item) => item.what === what)!.amount;

describe("bathItems", () => {
  const use = {
    batch,
    tank: bath.tank,
    dye: bath.dye,
    fresh: true,
    loads: [
      { order: 0, areaDm2: 30, seconds: 60, cycleSeconds: 180, dye: 2 },
      { order: 1, areaDm2: 10, seconds: 60, cycleSeconds: 180, dye: 1 },
    ],
    heatingMinutes: 90,
    holdingW: 250,
    makeUpWaterMl: 5000,
    topUpWaterMl: 200,
    dyeLeft: 500,
    life: { areaDm2: 400, dyeLeft: 450 },
  };

  test("reckons heating as heater power times minutes, and holding over the loads' cycles", () => {
    const items = bathItems(use);
    // 600 W × 1.5 h × 0.31; 250 W × 360 s × 0.31.
    expect(amountOf(items, "heating up")).toBeCloseTo(0.279, 12);
    expect(amountOf(items, "holding")).toBeCloseTo(0.00775, 12);
    // 140/1500 an hour × (1.5 h + 0.1 h).
    expect(amountOf(items, "tank")).toBeCloseTo(0.14933333333, 10);
  });

  test("takes a kept bath's make-up, rest and disposal by its share of the life, here a tenth", () => {
    const items = bathItems(use);
    expect(amountOf(items, "make-up")).toBeCloseTo(5000e-6 * 4.2 * 0.1, 12);
    expect(amountOf(items, "left in the bath")).toBeCloseTo(450 * 0.046 * 0.1, 12);
    expect(amountOf(items, "spent liquor")).toBeCloseTo(6 * 0.6 * 0.1, 12);
  });

  test("takes a dumped bath's whole", () => {
    const items = bathItems({ ...use, life: undefined });
    expect(amountOf(items, "make-up")).toBeCloseTo(5000e-6 * 4.2, 12);
    expect(amountOf(items, "left in the bath")).toBeCloseTo(500 * 0.046, 12);
    expect(amountOf(items, "spent liquor")).toBeCloseTo(6 * 0.6, 12);
  });

  test("takes no make-up for a dumped bath that was there before", () => {
    expect(amountOf(bathItems({ ...use, life: undefined, fresh: false }), "make-up")).toBe(0);
  });
});

describe("lifeShare", () => {
  test("is the batch's part of the life's area, and all of it where the bath does not last the batch", () => {
    expect([lifeShare(40, 400), lifeShare(400, 400), lifeShare(500, 400)]).toEqual([0.1, 1, 1]);
  });
});

const items: fc.Arbitrary<CostItem[]> = fc.array(
  fc.record({
    line: fc.constantFrom(...costLines),
    what: fc.constant("thing"),
    amount: fc.double({ min: 0, max: 1e4, noNaN: true }),
    shares: fc.array(fc.record({ order: fc.nat(4), weight: fc.double({ min: 0, max: 100, noNaN: true }) }), {
      minLength: 1,
      maxLength: 8,
    }),
  }),
  { maxLength: 40 },
);

describe("allocate", () => {
  test("gives the orders together what the items cost together, line by line", () => {
    fc.assert(
      fc.property(items, (given) => {
        const sheets = allocate(given, 5);
        const paid = sheetOf(given);
        for (const line of costLines) {
          const sum = sheets.reduce((total, sheet) => total + sheet[line], 0);
          expect(Math.abs(sum - paid[line])).toBeLessThanOrEqual(1e-9 * Math.max(1, paid[line]));
        }
      }),
    );
  });

  test("gives the same to the last digit in whatever order the items come", () => {
    fc.assert(
      fc.property(items, (given) => {
        expect(allocate(given.toReversed(), 5)).toEqual(allocate(given, 5));
        expect(sheetTotal(sheetOf(given.toReversed()))).toBe(sheetTotal(sheetOf(given)));
      }),
    );
  });

  test("splits an item without weight evenly", () => {
    const shares = [0, 1].map((order) => ({ order, weight: 0 }));
    const sheets = allocate([{ line: "water", what: "x", amount: 3, shares }], 2);
    expect(sheets.map((sheet) => sheet.water)).toEqual([1.5, 1.5]);
  });
});
