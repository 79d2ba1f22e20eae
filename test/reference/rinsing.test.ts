import { expect, test } from "vitest";
import { dragOutFromPurchases, rinseRatio, rinseStrength } from "../../src/core/bath/rinse/rinse.js";

test("a gallon an hour in 99 gallons an hour is a rinse of 100", () => {
  // source: rinsingArticles
  expect(rinseRatio(1, 99)).toBe(100);
});

test("a gallon of 10 oz/gal in 2000 gallons is a rinse of 2001 with 0.005 oz/gal", () => {
  // source: rinsingArticles
  expect(rinseRatio(1, 2000)).toBe(2001);
  expect(rinseStrength(10, 1, 2000)).toBeCloseTo(0.005, 3);
});

test("one part in 999 of water is a rinse of 1000 at 0.1 %", () => {
  // source: rinsingArticles, guidebook
  expect(rinseRatio(1, 999)).toBe(1000);
  expect(rinseStrength(100, 1, 999)).toBeCloseTo(0.1, 12);
});

test("1000 lb bought for a bath of 20 oz/gal are 800 gal dragged out", () => {
  // source: dragOutNote
  expect(dragOutFromPurchases(1000 * 16, 20)).toBe(800);
});
