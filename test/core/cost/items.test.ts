import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { allocate, sheetOf } from "../../../src/core/cost/allocate.js";
import { assumedShares, restsThatMatter } from "../../../src/core/cost/assumed-shares.js";
import { bathItems, type CostItem, lifeShare } from "../../../src/core/cost/items.js";
import { costLines } from "../../../src/core/cost/line/cost-lines.js";
import { sheetTotal } from "../../../src/core/cost/line/cost-sheet.js";
import { batch, bath, handling } from "../plan/sample.js";

const assumed = ["load", "loadPart", "liquorRatio"] as const;

const amountOf = (items: readonly CostItem[], what: string): number =>
  items.find((item) => item.what === what)!.amount;

describe("bathItems", () => {
  const load = {
    dipSeconds: 60,
    cycleSeconds: 180,
    handsOnWaitSeconds: 30,
    parts: 10,
    sizedByRatio: true,
    usualDragOut: true,
  };
  const use = {
    batch,
    tank: bath.tank,
    dye: bath.dye,
    fresh: true,
    loads: [
      { ...load, order: 0, areaDm2: 30, takenUp: 0.5, draggedOut: 1.5 },
      { ...load, order: 1, areaDm2: 10, takenUp: 0.5, draggedOut: 0.5 },
    ],
    heatingKwh: 0.9,
    workingKwh: 0.025,
    hotSeconds: 5760,
    rinseLitres: 4,
    makeUpWaterMl: 5000,
    topUpWaterMl: 200,
    dyeLeft: 500,
    life: { areaDm2: 400, dyeLeft: 450, endedByDye: true },
  };

  test("prices what heating up and working drew, the hot hours of the tank, and hands with their waits", () => {
    const items = bathItems(use);
    // 0.9 kWh × 0.31; 0.025 kWh × 0.31.
    expect(amountOf(items, "heating up")).toBeCloseTo(0.279, 12);
    expect(amountOf(items, "working")).toBeCloseTo(0.00775, 12);
    // (180 + 30) s × 34/3600, for each load.
    expect(amountOf(items, "dipping")).toBeCloseTo((210 * 34) / 3600, 12);
    // 140/1500 an hour × (1.5 h + 0.1 h).
    expect(amountOf(items, "tank")).toBeCloseTo(0.14933333333, 10);
  });

  test("prices rinse water by the load where each gets fresh water, and by area where a filling serves several", () => {
    const water = (rinseEvery: number) =>
      bathItems({ ...use, batch: { ...batch, handling: { ...handling, rinses: 2, rinseEvery } } })
        .filter(({ what }) => what === "rinsing")
        .map(({ amount, shares }) => [Number((1000 * amount).toFixed(6)), shares.length]);
    // 2 × 2 L a load at 4.20 a m³; 4 L of both loads.
    expect(water(1)).toEqual([
      [16.8, 1],
      [16.8, 1],
      [0, 2],
    ]);
    expect(water(2)).toEqual([
      [0, 1],
      [0, 1],
      [16.8, 2],
    ]);
  });

  test("says how much of each amount rests on uptake, drag-out, handling times and liquor ratio that nobody gave", () => {
    const unknown = { ...batch, handling: { ...handling, dragOutAssumed: true, assumed } };
    const items = bathItems({ ...use, batch: unknown, dye: { ...bath.dye, uptakeAssumed: true } });
    const rests = (what: string) => items.find((item) => item.what === what)!.rests;
    expect(rests("taken up")).toEqual({ uptake: 1 });
    expect(rests("dragged out")).toEqual({ dragOut: 1 });
    expect(rests("left in the bath")).toEqual({ uptake: 1, dragOut: 1 });
    // Of 210 s: load 15 s and 10 × 2 s; all but the 30 s that go by the part follow from how many loads there are.
    expect(rests("dipping")).toEqual({ handlingTimes: 35 / 210, liquorRatio: 180 / 210 });
    const given = bathItems(use);
    for (const { rests: none } of given)
      expect(Object.values(none ?? {}).every((share) => share === 0)).toBe(true);
    expect(assumedShares(given)).toEqual([]);
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

describe("restsThatMatter", () => {
  test("leaves out what carries under a twentieth of the cost", () => {
    const at = (share: number) => restsThatMatter(["uptake"], [{ what: "uptake", share }]);
    expect(at(0.0501)).toEqual(["uptake"]);
    expect(at(0.0499)).toEqual([]);
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
