import { expect, test } from "vitest";
import {
  auxiliaryStockMl,
  exhaustion,
  liquorMl,
  liquorRatio,
  shadePercent,
  stockMl,
  strengthCorrected,
} from "../../src/core/bath/make-up/on-weight.js";

test("5 g of fabric at 2 % from a 0.5 % stock take 20 mL", () => {
  // source: textileLabPages, measuring formula page (2014)
  expect(stockMl({ massG: 5, percentOfMass: 2, stockGPer100Ml: 0.5 })).toBe(20);
});

test("20 g/L of salt from a 25 % stock in a 1:10 bath of 5 g take 4 mL in 50 mL", () => {
  // source: textileLabPages, measuring formula page (2014)
  expect(liquorMl(5, 10)).toBe(50);
  expect(auxiliaryStockMl({ liquorMl: liquorMl(5, 10), gramsPerL: 20, stockGPer100Ml: 25 })).toBe(4);
});

test.each([
  [1.122, 5.61],
  [2.014, 10.07],
  [1.486, 7.43],
])("a shade of %d % on 5 g from a 1 % stock takes %d mL", (percentOfMass, expected) => {
  // source: textileLabPages, recipe page (2012), whose g/L are mL
  expect(stockMl({ massG: 5, percentOfMass, stockGPer100Ml: 1 })).toBeCloseTo(expected, 12);
});

test("a 1:8 bath of 5 g is 40 mL", () => {
  // source: textileLabPages, recipe page (2012)
  expect(liquorMl(5, 8)).toBe(40);
});

test("half a per cent on 5 g leaves 38.75 mL of water beside 6.25 and 2.5 mL of other stocks", () => {
  // source: textileLabPages, half per cent page (2015), whose 5 mg is 5 g
  const dye = stockMl({ massG: 5, percentOfMass: 0.5, stockGPer100Ml: 1 });
  expect(dye).toBe(2.5);
  expect(liquorMl(5, 10)).toBe(50);
  expect(liquorMl(5, 10) - (dye + 6.25 + 2.5)).toBe(38.75);
});

test("4 kg of dye on 100 kg in 1000 L are a 4 % shade at a ratio of 10", () => {
  // source: textileLabPages, lecture slides
  expect(shadePercent(4, 100)).toBe(4);
  expect(liquorRatio(1000, 100)).toBe(10);
});

test("10 mL are 8.3333 mL at strength 120, and 8 g are 20 g at strength 40", () => {
  // common practice, no source
  expect(strengthCorrected(10, 120)).toBeCloseTo(8.3333, 4);
  expect(strengthCorrected(8, 40)).toBe(20);
});

// source: broadbent2001 for K/(K + L); values computed
test.each([
  [10, [66.667, 50.0, 33.333, 25.0, 14.286]],
  [50, [90.909, 83.333, 71.429, 62.5, 45.455]],
  [100, [95.238, 90.909, 83.333, 76.923, 62.5]],
  [300, [98.361, 96.774, 93.75, 90.909, 83.333]],
])("a partition of %d L/kg exhausts less the longer the liquor is", (partition, expected) => {
  const percent = [5, 10, 20, 30, 60].map((ratio) => 100 * exhaustion(partition, ratio));
  percent.forEach((value, i) => {
    expect(value).toBeCloseTo(expected[i]!, 3);
  });
});
