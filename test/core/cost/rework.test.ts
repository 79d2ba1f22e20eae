import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  costWithRework,
  dipsPerStarted,
  reworkPays,
  yieldWithRework,
} from "../../../src/core/cost/rework.js";

const share = fc.double({ min: 0.05, max: 1, noNaN: true });
const money = fc.double({ min: 0.01, max: 50, noNaN: true });

describe("costWithRework", () => {
  // 1000 started at 90 %: 100 bad, 60 dipped again, 48 good of them: 948 good.
  // 1000 blanks of 2.00 and 1060 dips of 0.50 are 2530.00.
  test("is what a count of 1000 parts gives", () => {
    const shares = { firstPass: 0.9, rework: 0.6, secondPass: 0.8 };
    expect(1000 * yieldWithRework(shares)).toBeCloseTo(948, 9);
    expect(1000 * dipsPerStarted(shares)).toBeCloseTo(1060, 9);
    expect(costWithRework({ blank: 2, dyeing: 0.5, ...shares })).toBeCloseTo(2530 / 948, 12);
  });

  test("counts a second dip that costs more than the first", () => {
    const cost = costWithRework({
      blank: 2,
      dyeing: 0.5,
      again: 1,
      firstPass: 0.9,
      rework: 0.6,
      secondPass: 0.8,
    });
    expect(cost).toBeCloseTo((2000 + 500 + 60) / 948, 12);
  });

  test("falls by rework exactly where rework pays", () => {
    fc.assert(
      fc.property(money, money, share, share, share, (blank, dyeing, firstPass, rework, secondPass) => {
        const job = { blank, dyeing, firstPass, secondPass };
        const without = costWithRework({ ...job, rework: 0 });
        const change = costWithRework({ ...job, rework }) - without;
        if (Math.abs(change) < 1e-9 * without) return;
        expect(change < 0).toBe(reworkPays({ ...job, rework }));
      }),
    );
  });

  test("is cost over yield where nothing is dyed again", () => {
    expect(costWithRework({ blank: 1, dyeing: 1, firstPass: 0.8, rework: 0 })).toBeCloseTo(2.5, 12);
    expect(dipsPerStarted({ firstPass: 0.8, rework: 0 })).toBe(1);
  });
});
