import { expect, test } from "vitest";
import type { Batch } from "../../../src/core/model/batch.js";
import { offerOf } from "../../../src/core/offer/offer.js";
import type { OfferWish } from "../../../src/core/offer/offer-model.js";
import { SharedWork } from "../../../src/core/plan/run/shared-work.js";
import { offerReport } from "../../../src/report/offer/report.js";
import { coral, shop, wish } from "../../core/offer/sample.js";

const one: OfferWish = { ...wish, quantities: [10] };

function blocksOf(batch: Batch, asked: OfferWish = one): string {
  const offer = offerOf(batch, asked, new SharedWork());
  if (!offer.ok) throw new Error(offer.faults[0]!.message);
  return JSON.stringify(offerReport(offer.value).blocks);
}

test("without pricing there are costs with either bath, and nothing is said to pay", () => {
  const { pricing: _, ...unpriced } = shop;
  const text = blocksOf(unpriced);
  expect(text).toContain("Without pricing: in the batch file there are costs only.");
  expect(text).toContain("white fresh");
  expect(text).not.toContain("white price");
  expect(text).not.toContain("When a colour pays");
  expect(text).not.toContain("What holds the shop back");
});

test("without any money there are colours, minutes and dye", () => {
  const { pricing: _, currency: __, ...unpriced } = shop;
  const { price: ___, ...free } = coral;
  const text = blocksOf({
    ...unpriced,
    rates: {},
    dyes: [free],
    dryers: [],
    parts: shop.parts.map(({ blank: ____, ...part }) => part),
    shades: shop.shades.map((shade) => ({ ...shade, dye: free })),
    consumables: { perBath: 0, perLoad: 0, perPart: 0 },
    tanks: [],
    baths: shop.baths.map(({ tank: { equipment: _____, ...tank }, ...bath }) => ({
      ...bath,
      tank,
      dye: free,
    })),
  });
  expect(text).toContain("No price of anything is given");
  expect(text).toContain("minutes of hands");
});

test("names that YAML would not read back are in quotes", () => {
  const odd = { ...coral, name: "a: b" };
  const text = blocksOf({
    ...shop,
    dyes: [odd],
    shades: shop.shades.map((shade) => ({ ...shade, dye: odd })),
    baths: shop.baths.map((bath) => ({ ...bath, dye: odd })),
  });
  expect(JSON.parse(`[${text.slice(1, -1)}]`).length).toBeGreaterThan(5);
  expect(text).toContain(JSON.stringify('{ dye: "a: b", time:').slice(1, -1));
});

test("a kept price that leaves the shelf life out says so, and one with sales does not", () => {
  const said = "its shelf life is left out of the kept price";
  const untimed = { ...shop, baths: shop.baths.map(({ everyDays: _, ...bath }) => bath) };
  expect(blocksOf(untimed)).toContain(said);
  expect(blocksOf(untimed, { ...one, salesPerYear: 100 })).not.toContain(said);
  expect(blocksOf(shop)).not.toContain(said);
});

test("what holds the shop back is named with the hours that the sales take", () => {
  expect(blocksOf(shop, { ...one, salesPerYear: 12 })).toContain("what is scarce is sales");
  expect(blocksOf(shop, { ...one, salesPerYear: 50_000 })).toContain("cannot do them all");
  expect(blocksOf(shop)).toContain("--sales 12/month says whether the hours suffice");
});
