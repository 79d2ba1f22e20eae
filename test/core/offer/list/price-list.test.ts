import { expect, test } from "vitest";
import type { Batch, Shade } from "../../../../src/core/model/batch.js";
import { type PriceList, priceList } from "../../../../src/core/offer/list/price-list.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { costSource } from "../../../../src/core/plan/results/cost-source.js";
import { SharedWork } from "../../../../src/core/plan/run/shared-work.js";
import { coral, shop, wish } from "../sample.js";

const listed = (batch: Batch, salesPerYear?: number): PriceList =>
  priceList(
    batch,
    batch.shades,
    { ...wish, ...(salesPerYear === undefined ? {} : { salesPerYear }) },
    new SharedWork(),
  );

const plain = listed(shop);

test("every part comes in every shade on each base of its blank, and undyed, at every quantity", () => {
  const rows = plain.items.map(({ row }) => row);
  expect(rows).toHaveLength(2 * 3 * 2 * 3);
  const keys = rows.map(({ part, shade, base, quantity }) => `${part} ${shade} ${base} ${quantity}`);
  expect(new Set(keys).size).toBe(keys.length);
  expect(keys).toContain("hook none grey 50");
  expect(keys).toContain("tray deep white 1");
});

test.each([undefined, 120])(
  "costs and prices are those of the same batch worked alone, with sales %s",
  (sales) => {
    for (const { row, item } of (sales === undefined ? plain : listed(shop, sales)).items) {
      const { part, shade, base, quantity, everyDays } = row;
      const alone = (after: "keep" | "dump") => {
        const bath = { ...shop.baths[0]!, after, ...(everyDays === null ? {} : { everyDays }) };
        const made = costSource({ ...shop, baths: [bath], orders: [{ index: 0, ...item, quantity }] });
        if (!made.ok) throw new Error(made.faults[0]!.message);
        const order = made.value.orders[0]!;
        return { costPerPart: order.costPerPart, price: order.price ?? null };
      };
      expect([part, shade, base, quantity, row.costPerPart, row.price]).toEqual([
        part,
        shade,
        base,
        quantity,
        ...Object.values(alone("keep")),
      ]);
      expect(row.freshBath).toEqual(shade === "none" ? null : alone("dump"));
      if (shade !== "none") expect(everyDays).toBe(sales === undefined ? 7 : (365 * quantity) / sales);
    }
  },
);

test("hands, tank and dryer are those of the plan", () => {
  const { row, item } = plain.items.find(
    ({ row: { shade, quantity } }) => shade === "light" && quantity === 50,
  )!;
  const plan = planBatch({ ...shop, orders: [{ index: 0, ...item, quantity: 50 }] });
  if (!plan.ok) throw new Error(plan.faults[0]!.message);
  const { totals, timeline } = plan.value;
  expect(50 * row.handsOnMinutes).toBeCloseTo(totals.operatorMinutes, 9);
  expect(50 * row.dryerMinutes).toBeCloseTo(60 * totals.dryerRuns, 9);
  const setUp = timeline.find(({ what }) => what === "set up")!;
  const cleanUp = timeline.find(({ what }) => what === "clean up")!;
  expect(50 * row.tankMinutes).toBeCloseTo(cleanUp.endMinute - setUp.startMinute, 9);
});

test("profit is what the price leaves after tax, fees, overhead and cost", () => {
  for (const { row } of plain.items) {
    const net = row.price! / 1.2;
    expect(row.profitPerPart).toBeCloseTo(net * 0.96 - 1.1 * row.costPerPart!, 9);
    expect(row.margin).toBeCloseTo(row.profitPerPart! / net, 12);
    // The ending only ever raises a price.
    expect(row.margin).toBeGreaterThanOrEqual(0.45 - 1e-12);
    if (row.shade === "none") expect([row.profitPerHour, row.profitPerTankHour]).toEqual([null, null]);
    else expect(row.profitPerHour).toBeCloseTo((60 * row.profitPerPart!) / row.handsOnMinutes, 9);
  }
});

test("a row pays for a bath from where its price covers it, and a day holds what its slowest resource lets through", () => {
  for (const { row, fresh } of plain.items) {
    if (row.shade === "none") {
      expect([row.paysFromParts, row.partsPerDay]).toEqual([null, null]);
      continue;
    }
    const { fixed, variablePerPart } = fresh.costs.colours[0]!;
    const bath = fixed.makeUp + fixed.setUp + fixed.heating + fixed.disposal;
    const left = (parts: number): number =>
      parts * (0.96 * row.netPrice! - 1.1 * variablePerPart) - 1.1 * bath;
    expect(left(row.paysFromParts!)).toBeGreaterThanOrEqual(0);
    expect(left(row.paysFromParts! - 1)).toBeLessThan(0);
    const slowest = Math.max(row.handsOnMinutes, row.tankMinutes, row.dryerMinutes);
    expect(row.partsPerDay! * slowest).toBeCloseTo(480, 6);
  }
});

test("a shade that a base does not let its dye reach has a cost and no price, and a dye without a bath takes the first tank", () => {
  const pale: Shade = {
    name: "pale",
    dye: coral,
    tolerance: 1.5,
    target: { kind: "colour", colour: { kind: "lab", lab: [80.2, 21.7, 9.8] } },
  };
  const { items } = listed({ ...shop, shades: [pale], baths: [] });
  const grey = items.find(({ row }) => row.shade === "pale" && row.base === "grey")!.row;
  expect([grey.reachable, grey.price, grey.costPerPart]).toEqual([false, null, expect.any(Number)]);
  const white = items.find(({ row }) => row.shade === "pale" && row.base === "white")!.row;
  expect(white.price).toBeGreaterThan(0);
});

test("what cannot be dyed is left out and named once", () => {
  const [hook, tray] = shop.parts;
  const { items, faults } = listed({ ...shop, parts: [hook!, { ...tray!, volumeCm3: 5000 }] });
  expect(items.some(({ row }) => row.part === "tray" && row.shade !== "none")).toBe(false);
  expect(items.some(({ row }) => row.part === "hook" && row.shade === "deep")).toBe(true);
  const tooLarge = faults.filter(({ code }) => code === "part-too-large");
  expect(tooLarge).toHaveLength(1);
  expect(tooLarge[0]).toMatchObject({
    severity: "warning",
    message: expect.stringContaining("left out of the prices"),
  });
});
