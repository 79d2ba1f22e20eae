import { expect, test } from "vitest";
import {
  type ColourYear,
  yearlyBreakEven,
  yearlyProfit,
} from "../../../../src/core/cost/price/yearly-break-even.js";
import type { Batch } from "../../../../src/core/model/batch.js";
import { priceList } from "../../../../src/core/offer/list/price-list.js";
import type { ColourPays, OfferWish } from "../../../../src/core/offer/offer-model.js";
import { colourPays } from "../../../../src/core/offer/pays/colour-pays.js";
import { SharedWork } from "../../../../src/core/plan/run/shared-work.js";
import { shop, wish } from "../sample.js";

function paysOf(
  batch: Batch,
  more: Partial<OfferWish> = {},
): { pays: ColourPays; items: ReturnType<typeof priceList>["items"] } {
  const shared = new SharedWork();
  const asked = { ...wish, ...more };
  const { items } = priceList(batch, batch.shades, asked, shared);
  return { pays: colourPays(batch, items, asked, shared)[0]!, items };
}

const plain = paysOf(shop);

test("a fresh bath is paid by the batch that brings in its cost with overhead, alone and in the mix of the orders", () => {
  const { items } = plain;
  const [hook, tray] = ["hook", "tray"].map(
    (part) =>
      items.find(
        ({ row }) => row.part === part && row.shade === "deep" && row.base === "white" && row.quantity === 10,
      )!,
  );
  const order = (index: number, of: typeof hook, quantity: number) => ({ index, ...of!.item, quantity });
  const ordered = { ...shop, orders: [order(0, hook, 30), order(1, tray, 10)] };
  const { pays } = paysOf(ordered);
  const { fixed } = hook!.fresh.costs.colours[0]!;
  const bath = fixed.makeUp + fixed.setUp + fixed.heating + fixed.disposal;
  expect(pays.bathCost).toBeCloseTo(bath, 12);
  const left = [hook, tray].map(
    (one) => (one!.row.price! / 1.2) * 0.96 - 1.1 * one!.fresh.costs.colours[0]!.variablePerPart,
  );
  const mean = (3 * left[0]! + left[1]!) / 4;
  expect(pays.contributionPerPart).toBeCloseTo(mean, 9);
  expect(pays.batchParts).toBe(Math.ceil((1.1 * bath) / mean));
  const alone = pays.mix.find(
    ({ part, shade, base }) => part === "hook" && shade === "deep" && base === "white",
  )!;
  expect([alone.weight, alone.batchParts]).toEqual([0.75, Math.ceil((1.1 * bath) / left[0]!)]);
});

test("a year pays all baths that age takes, and a tank and jug of its own in the first one", () => {
  const { pays } = plain;
  expect([pays.makeUpsPerYear, pays.shelfLifeKnown, pays.tankPrice]).toEqual([5, true, 140]);
  expect(pays.firstYearParts).toBeGreaterThan(pays.yearParts!);
  const each = pays.yearParts! / 5;
  const dear = paysOf(shop, { jug: 70 }).pays;
  // Half as much again as the tank costs half as many parts again.
  expect(dear.firstYearParts! - pays.yearParts!).toBeCloseTo(
    1.5 * (pays.firstYearParts! - pays.yearParts!),
    -1,
  );
  const {
    dyes: [coral],
    ...rest
  } = shop;
  const { shelfLifeDays: _, ...ageless } = coral!;
  const without = paysOf({
    ...rest,
    dyes: [ageless],
    shades: shop.shades.map((shade) => ({ ...shade, dye: ageless })),
    baths: shop.baths.map((bath) => ({ ...bath, dye: ageless })),
  }).pays;
  expect([without.makeUpsPerYear, without.shelfLifeKnown]).toEqual([1, false]);
  expect(without.yearParts!).toBeCloseTo(each, -1);
});

test("at the sales that pay for the year the profit begins", () => {
  const { yearParts } = plain.pays;
  // The contribution per part is that of the price for kept baths, which the sales share; the list price moves with it.
  const year: ColourYear = {
    contribution: 4,
    perBatch: 20,
    batch: 10,
    perMakeUp: 30,
    makeUpsByAge: 5,
    partsPerMakeUp: 400,
    once: 140,
  };
  for (const once of [0, 140, 3000, 30_000]) {
    const parts = yearlyBreakEven({ ...year, once })!;
    expect(yearlyProfit(parts, { ...year, once })).toBeGreaterThanOrEqual(0);
    expect(yearlyProfit(parts - 1, { ...year, once })).toBeLessThan(0);
  }
  expect(yearlyBreakEven({ ...year, contribution: 2 })).toBeUndefined();
  expect(yearlyBreakEven({ ...year, partsPerMakeUp: 10 })).toBeUndefined();
  expect(yearParts).toBeGreaterThan(0);
  expect(paysOf(shop, { salesPerYear: 1000 }).pays.yearProfit).toBeGreaterThan(0);
});

test("without prices nothing is said to pay", () => {
  const { pricing: _, ...unpriced } = shop;
  const shared = new SharedWork();
  const { items } = priceList(unpriced, unpriced.shades, wish, shared);
  expect(colourPays(unpriced, items, wish, shared)).toEqual([]);
});
