import { expect, test } from "vitest";
import { mixDyes } from "../../../../src/core/recipe/mixture/mix-dye.js";
import { labOfDepths, mixtureOf } from "../../../../src/core/recipe/mixture/mixture.js";
import { bestTwoDips } from "../../../../src/core/recipe/sequence/two-dips.js";
import { freshDepth } from "../../../../src/core/uptake/law/uptake-model.js";
import { handling } from "../../plan/sample.js";
import { someDyes } from "../some-dyes.js";

const dyes = someDyes(51, 3);

test("two dips find the times that a colour was dyed with", () => {
  const pair = [dyes[0]!, dyes[2]!];
  const target = labOfDepths(
    mixtureOf(pair, 60),
    pair.map(({ model }, i) => freshDepth(model.uptake, [40, 150][i]!)),
  );
  const found = bestTwoDips(dyes, target, handling)!;
  expect(found.deltaE00).toBeLessThan(0.01);
  const seconds = new Map(found.dips.map(({ dye, seconds: s }) => [dye.name, s]));
  expect(seconds.get("dye 1")).toBeCloseTo(40, 0);
  expect(seconds.get("dye 3")).toBeCloseTo(150, 0);
});

test("the dye that does less harm to the other bath goes first, in whatever order the dyes come", () => {
  const target = [30, 5, 5] as const;
  const found = bestTwoDips(dyes, target, handling)!;
  expect(found.shift).toBeLessThan(found.shiftOtherwise);
  const again = bestTwoDips(dyes.toReversed(), target, handling)!;
  expect(again.dips.map(({ dye }) => dye.name)).toEqual(found.dips.map(({ dye }) => dye.name));
});

test("times stay between the shortest and the longest dip; one dye makes no two dips", () => {
  for (const { seconds } of bestTwoDips(dyes, [5, 0, 0], handling)!.dips) {
    expect(seconds).toBeGreaterThanOrEqual(handling.shortestSeconds - 1e-9);
    expect(seconds).toBeLessThanOrEqual(handling.longestSeconds + 1e-9);
  }
  const one = mixDyes([dyes[0]!.model], undefined);
  expect(bestTwoDips(one.ok ? one.value : [], [20, 0, 0], handling)).toBeUndefined();
});
