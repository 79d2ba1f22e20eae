import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  clearlyRounded,
  exactlyRounded,
  moneyText,
  roundedText,
  roundMoney,
} from "../../../src/core/cost/rounding.js";
import { minorDigits } from "../../../src/core/quantity/currencies.js";

test.each([
  [0.125, 2, "0.12"],
  [0.375, 2, "0.38"],
  [2.675, 2, "2.68"],
  [2.665, 2, "2.66"],
  [1.005, 2, "1.00"],
  [1.0049999999999997, 2, "1.00"],
  [1.0150000000000001, 2, "1.02"],
  [0.995, 2, "1.00"],
  [9.995, 2, "10.00"],
  [-2.675, 2, "-2.68"],
  [-0.005, 2, "0.00"],
  [-0.015, 2, "-0.02"],
  [0.5, 0, "0"],
  [1.5, 0, "2"],
  [2.5, 0, "2"],
  [1e-7, 2, "0.00"],
  [5e-7, 6, "0.000000"],
  [1.5e-6, 6, "0.000002"],
  [1e21, 2, "1000000000000000000000.00"],
  [1.25e22, 0, "12500000000000000000000"],
])("%d with %d decimals is %s", (amount, decimals, text) => {
  expect(roundedText(amount, decimals)).toBe(text);
});

test("an amount that is not a number is left as it is", () => {
  expect(roundedText(Number.NaN, 2)).toBe("NaN");
  expect(roundedText(Number.NEGATIVE_INFINITY, 2)).toBe("-Infinity");
});

// The list of minor units is from memory of ISO 4217.
test.each([
  ["EUR", 2],
  ["USD", 2],
  ["JPY", 0],
  ["KRW", 0],
  ["CLP", 0],
  ["ISK", 0],
  ["VND", 0],
  ["BHD", 3],
  ["IQD", 3],
  ["JOD", 3],
  ["KWD", 3],
  ["LYD", 3],
  ["OMR", 3],
  ["TND", 3],
  ["CLF", 4],
])("an amount in %s is printed with %d decimals", (currency, decimals) => {
  expect(minorDigits(currency)).toBe(decimals);
  expect(moneyText(0, currency)).toBe((0).toFixed(decimals));
});

describe("roundMoney", () => {
  test("rounds yen to whole ones and dinars to thousandths, half to even", () => {
    expect([0.5, 1.5, 2.5, 1234.5].map((yen) => roundMoney(yen, "JPY"))).toEqual([0, 2, 2, 1234]);
    expect([0.0005, 0.0015, 1.2345].map((dinar) => roundMoney(dinar, "KWD"))).toEqual([0, 0.002, 1.234]);
  });

  test("never moves an amount by more than half a minor unit, and keeps what is rounded", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.constantFrom("JPY", "EUR", "KWD"),
        (amount, currency) => {
          const rounded = roundMoney(amount, currency);
          const half = 0.5 * 10 ** -minorDigits(currency);
          expect(Math.abs(rounded - amount)).toBeLessThanOrEqual(half + 1e-9);
          expect(roundMoney(rounded, currency)).toBe(rounded);
          expect(roundMoney(-amount, currency) + rounded).toBe(0);
        },
      ),
    );
  });

  test("sends every half of a cent to the even cent", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), (cents) => {
        const even = cents % 2 === 0 ? cents : cents + 1;
        expect(roundMoney(Number(`${cents}5e-3`), "EUR")).toBe(Number(`${even}e-2`));
      }),
    );
  });
});

test("clearlyRounded gives what exactlyRounded gives, wherever it gives anything", () => {
  let given = 0;
  fc.assert(
    fc.property(
      fc.oneof(
        fc.double({ min: -1e7, max: 1e7, noNaN: true }),
        fc.integer({ min: -2e6, max: 2e6 }).map((n) => n / 1000),
      ),
      fc.constantFrom(0, 2, 3, 4),
      (amount, decimals) => {
        const quick = clearlyRounded(amount, decimals);
        if (quick === undefined) return;
        given++;
        expect(quick).toBe(exactlyRounded(amount, decimals));
      },
    ),
    { numRuns: 3000, seed: 20261125 },
  );
  expect(given).toBeGreaterThan(2000);
});
