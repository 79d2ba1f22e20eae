import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CostComparison, compareCosts } from "../../../../src/core/cost/history/compare.js";
import { type CostSnapshot, costBatch } from "../../../../src/core/cost/history/snapshot.js";
import { costLines } from "../../../../src/core/cost/line/cost-lines.js";
import { logMean, productChange } from "../../../../src/core/cost/line/log-mean.js";
import type { Batch } from "../../../../src/core/model/batch.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { batches } from "../../plan/arbitrary.js";
import { batch, deep, hook, light, order, tray } from "../../plan/sample.js";

function snapshot(...inputs: readonly Batch[]): CostSnapshot {
  const plans = inputs.map((input) => {
    const plan = planBatch(input);
    if (!plan.ok) throw new Error(plan.faults.map(({ message }) => message).join("; "));
    return costBatch(plan.value);
  });
  return { currency: plans[0]?.currency ?? null, orders: plans.flatMap(({ orders }) => orders) };
}

function compared(before: CostSnapshot, now: CostSnapshot): CostComparison {
  const outcome = compareCosts(before, now);
  if (!outcome.ok) throw new Error("not compared");
  return outcome.value;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
/** Codes of what changed an order's cost, the largest first. */
const codes = (input: Batch, changed: Batch, index = 0): string[] =>
  compared(snapshot(input), snapshot(changed)).orders[index]!.causes.map(({ code }) => code);

describe("compareCosts", () => {
  test("finds nothing changed between a report and itself", () => {
    const { counts, orders, totalBefore, totalNow } = compared(snapshot(batch), snapshot(batch));
    expect(counts).toEqual({ changed: 0, same: 2, new: 0, gone: 0 });
    expect(orders.every(({ causes, change }) => causes.length === 0 && change === 0)).toBe(true);
    expect(totalNow).toBe(totalBefore);
  });

  test("lays a higher rate of labour to labour alone, by the rate times what labour cost", () => {
    const before = snapshot(batch);
    const dearer = snapshot({ ...batch, rates: { ...batch.rates, labourPerHour: 34 * 1.1 } });
    const { orders } = compared(before, dearer);
    orders.forEach((change, i) => {
      const { lines, quantity } = before.orders[i]!;
      expect(change.causes).toHaveLength(1);
      expect(change.causes[0]).toMatchObject({ code: "labour-rate", line: "labour", before: 34 });
      expect(change.causes[0]!.change).toBeCloseTo(change.change!, 10);
      expect(change.change).toBeCloseTo((0.1 * lines!.labour) / quantity, 10);
    });
  });

  test.each([
    ["dye-price", { dyes: [{ ...batch.dyes[0]!, price: 50 }] }],
    ["water-price", { rates: { ...batch.rates, waterPerM3: 5 } }],
    ["electricity-price", { rates: { ...batch.rates, electricityPerKwh: 0.4 } }],
    ["disposal-price", { rates: { ...batch.rates, disposalPerL: 0.7 } }],
    ["consumables", { consumables: { ...batch.consumables, perPart: 0.05 } }],
    ["equipment", { dryers: [{ ...batch.dryers[0]!, equipment: { price: 200, lifeHours: 3000 } }] }],
    ["handling-time", { handling: { ...batch.handling, rinseSeconds: 31 }, rates: { labourPerHour: 34 } }],
  ] as const)("names %s where nothing else changed", (code, changes) => {
    const dye = "dyes" in changes ? changes.dyes[0] : batch.dyes[0]!;
    const relit = (input: Batch): Batch => ({
      ...input,
      rates: "handling" in changes ? { labourPerHour: 34 } : input.rates,
    });
    const changed: Batch = {
      ...batch,
      ...changes,
      baths: batch.baths.map((bath) => ({ ...bath, dye })),
      orders: batch.orders.map((each) => ({ ...each, shade: { ...each.shade!, dye } })),
    };
    expect(codes(relit(batch), changed)[0]).toBe(code);
    if (code !== "handling-time") expect(codes(batch, changed)).toEqual([code]);
  });

  test("names the undyed part where its price rose", () => {
    const orders = [order(0, { ...tray, blank: 4.6 }, deep, 20), order(1, hook, light, 97)];
    expect(codes(batch, { ...batch, orders })).toEqual(["blank-price"]);
  });

  test("names the size of loads where they became smaller", () => {
    const small = { ...hook, perLoad: 8 };
    const orders = [order(0, tray, deep, 20), order(1, small, light, 97)];
    const [first] = compared(snapshot(batch), snapshot({ ...batch, orders })).orders[1]!.causes;
    expect(first).toMatchObject({ code: "load-size", line: "labour" });
    expect(first!.now).toBeLessThan(8.01);
    expect(first!.change).toBeGreaterThan(0);
  });

  test("names the yield where more parts must be started", () => {
    expect(codes(batch, { ...batch, yield: 0.8 })).toContain("yield");
  });

  test("names the strength where a weaker bath takes longer", () => {
    const weak: Batch = {
      ...batch,
      baths: [
        {
          ...batch.baths[0]!,
          topUp: "none",
          start: { kind: "kept", volumeL: 6, strength: 0.85, ageDays: 3, areaDm2: 200 },
        },
      ],
    };
    const { causes } = compared(snapshot(batch), snapshot(weak)).orders[1]!;
    const cause = causes.find(({ code }) => code === "strength")!;
    expect(cause.line).toBe("labour");
    expect(cause.change).toBeGreaterThan(0);
    expect(cause.before).toBeGreaterThan(0.95);
    expect(cause.now).toBeLessThan(0.86);
  });

  test("gives causes and lines that add up to the change of the cost, for random batches", () => {
    let done = 0;
    fc.assert(
      fc.property(
        batches,
        fc.integer({ min: 1, max: 90 }),
        fc.double({ min: 0.7, max: 1, noNaN: true }),
        (input, labour, good) => {
          const other: Batch = {
            ...input,
            rates: { ...input.rates, labourPerHour: labour, waterPerM3: labour / 7 },
            yield: good,
            handling: { ...input.handling, drainSeconds: labour },
            orders: input.orders.map((each) => ({ ...each, quantity: each.quantity + labour })),
          };
          const plans = [planBatch(input), planBatch(other)];
          if (!plans.every((plan) => plan.ok)) return;
          done++;
          for (const { change, causes, lines } of compared(snapshot(input), snapshot(other)).orders) {
            const tolerance = 1e-6 * Math.max(1, Math.abs(change!));
            expect(Math.abs(sum(causes.map((cause) => cause.change)) - change!)).toBeLessThan(tolerance);
            expect(Math.abs(sum(costLines.map((line) => lines![line])) - change!)).toBeLessThan(tolerance);
          }
        },
      ),
      { numRuns: 60, seed: 7 },
    );
    expect(done).toBeGreaterThan(30);
  });
});

describe("compareCosts over orders", () => {
  const [first, second] = snapshot(batch).orders as [
    CostSnapshot["orders"][number],
    CostSnapshot["orders"][number],
  ];
  const of = (...orders: CostSnapshot["orders"]): CostSnapshot => ({ currency: "EUR", orders });

  test("says which are new and which are gone, the gone ones last", () => {
    const { orders, counts } = compared(of(first), of(second));
    expect(orders.map(({ status, part }) => [status, part])).toEqual([
      ["new", second.part],
      ["gone", first.part],
    ]);
    expect(counts).toEqual({ changed: 0, same: 0, new: 1, gone: 1 });
    expect(orders.map(({ costBefore, costNow }) => [costBefore, costNow])).toEqual([
      [null, second.costPerPart],
      [first.costPerPart, null],
    ]);
  });

  test("finds an order again that moved to another place in the file", () => {
    const moved = compared(of(first, second), of({ ...second, order: 1 }, { ...first, order: 2 }));
    expect(moved.counts).toEqual({ changed: 0, same: 2, new: 0, gone: 0 });
  });

  test("pairs orders that are alike but for their size by quantity and cost, wherever they are", () => {
    const lot = (quantity: number, costPerPart: number) => ({ ...first, quantity, costPerPart });
    const { orders, counts } = compared(of(lot(76, 1.58), lot(200, 1.46)), of(lot(200, 1.46)));
    expect(counts).toEqual({ changed: 0, same: 1, new: 0, gone: 1 });
    expect(
      orders.map(({ status, quantityBefore, quantityNow }) => [status, quantityBefore, quantityNow]),
    ).toEqual([
      ["same", 200, 200],
      ["gone", 76, null],
    ]);
    // A dearer one of the same size is still the same order.
    expect(compared(of(lot(76, 1.58), lot(200, 1.46)), of(lot(200, 1.5))).orders[0]).toMatchObject({
      status: "changed",
      costBefore: 1.46,
      costNow: 1.5,
    });
  });

  test("lays a line to its price where that is known in one of the reports only", () => {
    const { price, ...free } = batch.dyes[0]!;
    const none: Batch = {
      ...batch,
      dyes: [free],
      baths: batch.baths.map((bath) => ({ ...bath, dye: free })),
      orders: batch.orders.map((each) => ({ ...each, shade: { ...each.shade!, dye: free } })),
    };
    const [order] = compared(snapshot(none), snapshot(batch)).orders;
    expect(order!.causes).toMatchObject([{ code: "dye-price", before: 0, now: price }]);
    expect(order!.causes[0]!.change).toBeCloseTo(order!.change!, 12);
  });

  test("pairs like orders by date first, then by their order", () => {
    const dated = (date: string, costPerPart: number) => ({ ...first, date, costPerPart });
    const before = of(dated("2027-01-01", 1), dated("2027-01-02", 2), dated("2027-01-03", 3));
    const now = of(dated("2027-01-04", 4), dated("2027-01-03", 3), dated("2027-01-01", 1));
    expect(compared(before, now).orders.map(({ costBefore, costNow }) => [costBefore, costNow])).toEqual([
      [2, 4],
      [3, 3],
      [1, 1],
    ]);
  });

  test("tells bases apart", () => {
    const { counts } = compared(of({ ...first, base: "white" }), of({ ...first, base: "grey" }));
    expect(counts).toMatchObject({ new: 1, gone: 1 });
  });

  test("calls an order changed whose price alone changed", () => {
    const { orders } = compared(of({ ...first, price: 9.9 }), of({ ...first, price: 10.9 }));
    expect(orders[0]).toMatchObject({
      status: "changed",
      change: 0,
      priceBefore: 9.9,
      priceNow: 10.9,
      causes: [],
    });
  });

  test("gives the change by line but the cause by line only where a report has no drivers", () => {
    const old = { ...first, drivers: null };
    const now = {
      ...first,
      lines: { ...first.lines!, labour: first.lines!.labour + 20 },
      costPerPart: first.costPerPart! + 1,
    };
    const { causes, change } = compared(of(old), of(now)).orders[0]!;
    expect(change).toBeCloseTo(1, 12);
    expect(causes).toHaveLength(1);
    expect(causes[0]).toMatchObject({ line: "labour", code: "set-up-share" });
    expect(causes[0]!.change).toBeCloseTo(1, 12);
  });

  test("refuses reports in unlike currencies", () => {
    const outcome = compareCosts({ currency: "EUR", orders: [] }, { currency: "JPY", orders: [] });
    expect(outcome.faults.map(({ code }) => code)).toEqual(["mixed-currencies"]);
  });

  test("knows no change where a cost is not known", () => {
    const bare = { ...first, costPerPart: null, total: null, lines: null };
    expect(compared(of(bare), of(first)).orders[0]).toMatchObject({ status: "changed", change: null });
    expect(compared(of(bare), of(bare)).orders[0]).toMatchObject({ status: "same", change: null });
  });
});

describe("productChange", () => {
  test("splits a change so that the parts add up, equal ratios alike", () => {
    const [a, b] = productChange([2, 3], [4, 6])!;
    expect(a).toBeCloseTo(9, 12);
    expect(b).toBeCloseTo(9, 12);
  });

  test("adds up for random factors", () => {
    const factor = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(factor, factor, factor), fc.tuple(factor, factor, factor), (before, now) => {
        const whole = now[0] * now[1] * now[2] - before[0] * before[1] * before[2];
        const scale = Math.max(1, now[0] * now[1] * now[2], before[0] * before[1] * before[2]);
        expect(Math.abs(sum(productChange(before, now)!) - whole) / scale).toBeLessThan(1e-9);
      }),
    );
  });

  test("gives nothing where a factor is zero", () => {
    expect(productChange([0, 1], [1, 1])).toBeUndefined();
  });
});

test("logMean lies between its two numbers, also where they nearly agree", () => {
  const amount = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(amount, fc.double({ min: -0.5, max: 2, noNaN: true }), (a, rise) => {
      const b = a * (1 + rise);
      const mean = logMean(a, b);
      expect(mean).toBeGreaterThanOrEqual(Math.min(a, b) * (1 - 1e-9));
      expect(mean).toBeLessThanOrEqual(Math.max(a, b) * (1 + 1e-9));
      expect(logMean(a, a * (1 + 1e-13))).toBeCloseTo(a, 6);
    }),
  );
});
