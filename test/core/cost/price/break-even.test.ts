import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { partsToStart } from "../../../../src/core/bath/load/load-size.js";
import { breakEven, contributionPerPart } from "../../../../src/core/cost/price/break-even.js";
import {
  blankRiseToEqualProfit,
  equalProfitSurcharge,
  profitPerPart,
} from "../../../../src/core/cost/price/equal-profit.js";

const costs = { makeUp: 27.6, setUp: 17, heating: 0.3, disposal: 3.6 };

describe("breakEven", () => {
  // Fixed 48.50 × 1.1 = 53.35; a part leaves 6 × 0.96 - 2 × 1.1 = 3.56; 53.35/3.56 = 14.99.
  test("needs 15 parts where each leaves 3.56 and the colour costs 53.35", () => {
    const found = breakEven(costs, { netPrice: 6, fees: 0.04, overhead: 0.1 }, 2)!;
    expect(found.fixed).toBeCloseTo(48.5, 12);
    expect(found.contributionPerPart).toBeCloseTo(3.56, 12);
    expect(found.parts).toBe(15);
  });

  test("needs exactly the quotient where it is whole", () => {
    expect(
      breakEven({ makeUp: 0.3, setUp: 0, heating: 0, disposal: 0 }, { netPrice: 0.1, fees: 0 }, 0)!.parts,
    ).toBe(3);
  });

  test.each([
    [0.2, 90, 93],
    [0.5, 36, 38],
    [1, 18, 19],
  ])(
    "needs, for a set-up of 18 at %d a part, %d good parts, of which 97 %% come out: %d are started",
    (share, good, started) => {
      const found = breakEven(
        { makeUp: 0, setUp: 18, heating: 0, disposal: 0 },
        { netPrice: share, fees: 0 },
        0,
      )!;
      expect([found.parts, partsToStart(found.parts, 0.97)]).toEqual([good, started]);
    },
  );

  test("is none where a part leaves nothing, or less", () => {
    expect(breakEven(costs, { netPrice: 2, fees: 0 }, 2)).toBeUndefined();
    expect(breakEven(costs, { netPrice: 2, fees: 0 }, 3)).toBeUndefined();
  });

  test("is the first quantity at which sales pay for everything", () => {
    const amount = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(amount, amount, amount, amount, (makeUp, setUp, netPrice, variable) => {
        const sale = { netPrice, fees: 0.05, overhead: 0.1 };
        const found = breakEven({ makeUp, setUp, heating: 1, disposal: 1 }, sale, variable);
        if (found === undefined) {
          expect(contributionPerPart(sale, variable)).toBeLessThan(1e-12);
          return;
        }
        const profit = (parts: number): number => parts * found.contributionPerPart - 1.1 * found.fixed;
        const slack = 1e-9 * found.fixed;
        expect(profit(found.parts)).toBeGreaterThanOrEqual(-slack);
        expect(profit(found.parts - 1)).toBeLessThan(slack);
      }),
    );
  });
});

describe("equal profit", () => {
  const amount = fc.double({ min: 0.1, max: 50, noNaN: true });
  const part = fc.double({ min: 0, max: 0.5, noNaN: true });

  test("comes out of the surcharge", () => {
    fc.assert(
      fc.property(amount, amount, amount, part, part, (white, grey, greyPrice, fees, overhead) => {
        const sale = { fees, overhead };
        const more = equalProfitSurcharge({ costPerPart: white, other: grey, ...sale });
        const dear = profitPerPart({ ...sale, netPrice: greyPrice + more, costPerPart: white });
        expect(dear).toBeCloseTo(profitPerPart({ ...sale, netPrice: greyPrice, costPerPart: grey }), 9);
      }),
    );
  });

  test("comes out of the rise of the blank, which each good part carries by its yield", () => {
    fc.assert(
      fc.property(
        amount,
        amount,
        amount,
        amount,
        part,
        part,
        (cost, otherCost, price, otherPrice, overhead, lost) => {
          const one = { netPrice: price, fees: 0.04, overhead, costPerPart: cost };
          const other = { netPrice: otherPrice, fees: 0.04, overhead, costPerPart: otherCost };
          const rise = blankRiseToEqualProfit(one, other, 1 - lost);
          const risen = { ...one, costPerPart: cost + rise / (1 - lost) };
          expect(profitPerPart(risen)).toBeCloseTo(profitPerPart(other), 8);
        },
      ),
    );
  });
});
