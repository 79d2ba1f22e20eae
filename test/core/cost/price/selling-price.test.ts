import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { endingStep, nextEnding } from "../../../../src/core/cost/price/ending.js";
import { sellingPrice } from "../../../../src/core/cost/price/selling-price.js";

describe("nextEnding", () => {
  test.each([
    [12.3, 0.9, 12.9],
    [12.9, 0.9, 12.9],
    [12.900000000001, 0.9, 12.9],
    [12.9001, 0.9, 13.9],
    [0.2, 0.9, 0.9],
    [7.31, 0.05, 7.35],
    [7.351, 0.05, 7.45],
    [12.991, 0.99, 13.99],
    [104, 9.9, 109.9],
    [130, 95, 195],
    [12.01, 0, 13],
    [12, 0, 12],
    [11, 1, 11],
    [12, 1, 21],
  ])("raises %d with the ending %d to %d", (amount, ending, expected) => {
    expect(nextEnding(amount, ending)).toBe(expected);
  });

  test("steps by the smallest power of ten above the ending", () => {
    const steps = [0.009, 0.05, 0.1, 0.9, 0.99, 1, 9.99, 10, 95].map(endingStep);
    expect(steps).toEqual([0.01, 0.1, 1, 1, 1, 10, 10, 100, 100]);
  });

  test("never lowers a price, and never raises it by a whole step", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1e6, noNaN: true }),
        fc.constantFrom(0, 0.05, 0.5, 0.9, 0.95, 0.99, 4.9, 9.9, 95),
        (amount, ending) => {
          const price = nextEnding(amount, ending);
          const steps = (price - ending) / endingStep(ending);
          expect(price).toBeGreaterThanOrEqual(amount * (1 - 1e-9));
          expect(steps).toBeCloseTo(Math.round(steps), 6);
          expect(price).toBeLessThan(Math.max(amount, ending) + endingStep(ending));
          expect(nextEnding(price, ending)).toBe(price);
        },
      ),
    );
  });
});

describe("sellingPrice", () => {
  const pricing = { overhead: 0.1, fees: 0.04, margin: 0.45, tax: 0.2 };

  test("is the cost with overhead over what fees and margin leave, then taxed, then raised to the ending", () => {
    const outcome = sellingPrice({ cost: 3.06, ...pricing, ending: 0.9 });
    if (!outcome.ok) throw new Error("no price");
    expect(outcome.value.fullCost).toBeCloseTo(3.366, 12);
    expect(outcome.value.netPrice).toBeCloseTo(6.6, 12);
    expect(outcome.value.price).toBe(8.9);
  });

  test("leaves what was asked for: price less fees and margin is the cost with overhead", () => {
    const share = (max: number) => fc.double({ min: 0, max, noNaN: true });
    fc.assert(
      fc.property(
        share(1000),
        share(1),
        share(0.4),
        share(0.5),
        share(0.3),
        (cost, overhead, fees, margin, tax) => {
          const outcome = sellingPrice({ cost, overhead, fees, margin, tax });
          if (!outcome.ok) throw new Error("no price");
          const { netPrice, price, fullCost } = outcome.value;
          expect(netPrice * (1 - fees - margin)).toBeCloseTo(cost * (1 + overhead), 8);
          expect(fullCost).toBeCloseTo(cost * (1 + overhead), 10);
          expect(price).toBeCloseTo(netPrice * (1 + tax), 8);
        },
      ),
    );
  });

  test.each([
    [0.5, 0.5],
    [0.9, 0.1],
    [0.7, 0.3],
    [0.6, 0.6],
    [1, 0],
  ])("gives a fault for a margin of %d with fees of %d", (margin, fees) => {
    const outcome = sellingPrice({ cost: 1, ...pricing, margin, fees });
    expect(outcome.ok).toBe(false);
    expect(outcome.faults).toHaveLength(1);
    expect(outcome.faults[0]).toMatchObject({
      code: "margin-and-fees",
      severity: "error",
      path: ["pricing", "margin"],
    });
  });

  test("says both shares in per cent in the fault", () => {
    const [fault] = sellingPrice({ cost: 1, ...pricing, margin: 0.97, fees: 0.035 }).faults;
    expect(fault!.message).toBe("margin 97 % and fees 3.5 % leave nothing of the price to pay the cost");
  });
});
