import { expect, test } from "vitest";
import { carryOverShift, type Liquor } from "../../../../src/core/recipe/carry-over/carry-over.js";
import { throughOneTank } from "../../../../src/core/recipe/carry-over/through-one-tank.js";
import { someDyes } from "../some-dyes.js";

const baths: readonly Liquor[] = someDyes(41, 3).map((dye, i) => ({
  name: dye.name,
  dyes: [dye],
  strengths: [[1, 0.05, 0.4][i]!],
}));
const carried = { carriedMl: 60, bathMl: 5000, rinseMl: 2000 };

test("a tank's baths come in the order of least harm, each with the rinses after the one before", () => {
  const { order, steps, worst } = throughOneTank(baths, 60, carried)!;
  expect(order).toHaveLength(3);
  expect(steps.map(({ after, into }) => [after, into])).toEqual([
    [order[0], order[1]],
    [order[1], order[2]],
  ]);
  // The palest bath is harmed most: it comes before the strong ones.
  expect(order[0]).toBe("dye 2");
  expect(worst.into).toBe("dye 2");
  expect(worst.rinses).toBeGreaterThan(0);
  const named = (name: string): Liquor => baths.find((bath) => bath.name === name)!;
  for (const { after, into, shift } of [...steps, worst])
    expect(shift).toBeCloseTo(carryOverShift(named(after), named(into), 60, carried), 12);
  expect(Math.max(...steps.map(({ shift }) => shift))).toBeLessThanOrEqual(worst.shift);
});

test("one bath alone has no order", () => {
  expect(throughOneTank(baths.slice(0, 1), 60, carried)).toBeUndefined();
});
