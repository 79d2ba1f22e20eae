import { expect, test } from "vitest";
import { marginOf, markupForMargin, markupOf } from "../../src/core/cost/price/margin.js";
import { sellingPrice } from "../../src/core/cost/price/selling-price.js";
import { costPerGood, unitCostWithYield } from "../../src/core/cost/rate/unit-cost.js";
import { roundMoney } from "../../src/core/cost/rounding.js";

const job = { material: 2.5, perHour: 38 + 55, secondsPerPart: 45, setUp: 240, batchSize: 500 };
const plain = { overhead: 0, fees: 0, tax: 0 };
const price = (cost: number, margin: number): number => {
  const outcome = sellingPrice({ cost, margin, ...plain });
  if (!outcome.ok) throw new Error("no price");
  return outcome.value.price;
};

test("a quotation's labour with machine and its set-up come to 1.16 and 0.48 a part", () => {
  // source: quotationPage
  const hourly = unitCostWithYield({ ...job, material: 0, setUp: 0, scrap: 0 });
  expect(hourly).toBeCloseTo(1.1625, 12);
  expect(roundMoney(hourly, "EUR")).toBe(1.16);
  expect(unitCostWithYield({ ...job, material: 0, perHour: 0, scrap: 0 })).toBe(0.48);
});

test.each([
  [0.0216, 4.23, 4.233953, 5.65, 5.645271],
  [0.03, 4.27, 4.270619, 5.69, 5.694158],
])(
  "at a scrap of %d a part costs %d (%d) and sells at %d (%d) for a margin of 25 %",
  (scrap, cent, exact, priceCent, priceExact) => {
    // source: quotationPage; the second price is computed, the page prints the unit cost only
    const unit = unitCostWithYield({ ...job, scrap });
    expect(unit).toBeCloseTo(exact, 6);
    expect(roundMoney(unit, "EUR")).toBe(cent);
    expect(price(unit, 0.25)).toBeCloseTo(priceExact, 6);
    expect(roundMoney(price(unit, 0.25), "EUR")).toBe(priceCent);
  },
);

test("of 1000 parts at 4.35 with 42 scrapped at 0.60, each of the 958 good ones costs 4.567015", () => {
  // source: scrapExample
  const perGood = costPerGood({ started: 1000, scrapped: 42, unitCost: 4.35, disposalEach: 0.6 });
  expect(perGood).toBeCloseTo(4.567015, 6);
  expect(perGood * 958).toBeCloseTo(1000 * 4.35 + 42 * 0.6, 9);
});

test("cost 80 at price 100 is a margin of 20 % and a markup of 25 %; a margin of 25 % asks for 106.6667", () => {
  // computed, no source
  expect(marginOf(80, 100)).toBe(0.2);
  expect(markupOf(80, 100)).toBe(0.25);
  expect(markupForMargin(0.2)).toBeCloseTo(0.25, 15);
  expect(80 * (1 + 0.25)).toBe(price(80, 0.2));
  expect(price(80, 0.25)).toBeCloseTo(106.6667, 4);
});
