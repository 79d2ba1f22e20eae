import { expect, test } from "vitest";
import { ciede2000 } from "../../../../src/core/colour/difference/ciede2000.js";
import type { Lab } from "../../../../src/core/model/batch.js";
import { mixedLab, mixtureOf } from "../../../../src/core/recipe/mixture/mixture.js";
import { amountOf, pouredFor } from "../../../../src/core/recipe/solve/amounts.js";
import { firstDoubt95 } from "../../../../src/core/recipe/solve/doubt.js";
import { additionTo } from "../../../../src/core/recipe/trial/addition.js";
import { correctedRecipe } from "../../../../src/core/recipe/trial/corrected-recipe.js";
import { fitTrials, type MixTrial } from "../../../../src/core/recipe/trial/fit-trials.js";
import { unlikelyTrial } from "../../../../src/core/recipe/trial/unlikely-trial.js";
import { someDyes } from "../some-dyes.js";

const dyes = someDyes(31, 4);
const pair = dyes.slice(0, 2);
const truth = {
  factors: new Map([
    ["dye 1", 1.12],
    ["dye 2", 0.9],
  ]),
  offset: [0.8, -0.5, 1] as const,
};

const trialOf = (strengths: readonly number[], lab?: Lab): MixTrial => ({
  dyes: pair,
  strengths,
  poured: pouredFor(pair, strengths, 500),
  seconds: 60,
  lab: lab ?? mixedLab(mixtureOf(pair, 60, truth), strengths),
});

test("fitTrials finds most of what a few exact trials say, and stays near 1 and 0 without news", () => {
  const { factors, offset } = fitTrials([
    trialOf([0.3, 0.2]),
    trialOf([0.6, 0.1]),
    trialOf([0.1, 0.5]),
    trialOf([0.8, 0.8]),
  ]);
  expect(Math.log(factors.get("dye 1")!)).toBeGreaterThan(0.07);
  expect(Math.log(factors.get("dye 2")!)).toBeLessThan(-0.07);
  expect(Math.hypot(...offset.map((value, axis) => value - truth.offset[axis]!))).toBeLessThan(0.7);
  const none = fitTrials([trialOf([0.3, 0.2], mixedLab(mixtureOf(pair, 60), [0.3, 0.2]))]);
  for (const factor of none.factors.values()) expect(factor).toBeCloseTo(1, 6);
});

test("one trial corrects the recipe that it tried: what was read is then foretold to within the noise", () => {
  const correction = fitTrials([trialOf([0.3, 0.2])]);
  const foretold = mixedLab(mixtureOf(pair, 60, correction), [0.3, 0.2]);
  const read = trialOf([0.3, 0.2]).lab;
  expect(Math.hypot(...foretold.map((value, axis) => value - read[axis]!))).toBeLessThan(0.1);
});

test("the corrected recipe keeps its dyes where they do, and takes one more where they do not", () => {
  const wish = (strengths: readonly number[]) => ({
    target: mixedLab(mixtureOf(dyes.slice(0, strengths.length), 60, truth), strengths),
    seconds: 60,
    coldMl: () => 500,
  });
  const last = trialOf([0.35, 0.15]);
  const same = correctedRecipe([last], dyes, wish([0.3, 0.2]), truth)!;
  expect(same.mixture.dyes).toEqual(pair);
  expect(same.deltaE00).toBeLessThan(0.05);
  const more = correctedRecipe([last], dyes, wish([0.3, 0.2, 0.3]), truth)!;
  expect(more.mixture.dyes).toHaveLength(3);
  expect(more.mixture.dyes.slice(0, 2)).toEqual(pair);
  expect(more.deltaE00).toBeLessThan(0.25);
});

const standing = (capacityMl: number) => ({
  dyes: pair,
  strengths: [0.3, 0.2],
  coldMl: 500,
  capacityMl,
});
const none = { factors: new Map<string, number>(), offset: [0, 0, 0] as const };
const aim = (strengths: readonly number[]) => ({
  target: mixedLab(mixtureOf(pair, 60), strengths),
  seconds: 60,
});

test("an addition only adds: dye for what is too weak, water for what is too strong", () => {
  const deeper = additionTo(standing(1000), pair, aim([0.4, 0.2]), none);
  expect(deeper.deltaE00).toBeLessThan(0.1);
  expect(deeper.poured.dyes.every(({ amount }) => amount >= 0)).toBe(true);
  expect(deeper.poured.waterMl).toBeGreaterThanOrEqual(0);
  const paler = additionTo(standing(1000), pair, aim([0.2, 0.2 / 1.5]), none);
  expect(paler.deltaE00).toBeLessThan(0.1);
  expect(paler.coldMl).toBeGreaterThan(700);
});

test("dye and volume after an addition are those before and what went in", () => {
  const after = additionTo(standing(1000), pair, aim([0.28, 0.3]), none);
  pair.forEach((dye, i) => {
    const before = amountOf(dye, [0.3, 0.2][i]!, 500);
    expect(amountOf(dye, after.strengths[i]!, after.coldMl)).toBeCloseTo(
      before + after.poured.dyes[i]!.amount,
      6,
    );
  });
  const poured = after.poured.dyes.reduce((sum, { amount }) => sum + amount, after.poured.waterMl);
  expect(500 + poured).toBeCloseTo(after.coldMl, 6);
});

test("where the vessel is full, a bath that is too strong stays too strong", () => {
  expect(additionTo(standing(500), pair, aim([0.1, 0.1]), none).deltaE00).toBeGreaterThan(3);
});

test("a trial is unlikely where it is farther than 1.5 times the doubt from what the swatches predict", () => {
  const mixture = mixtureOf(pair, 60);
  const [l, a, b] = mixedLab(mixture, [0.3, 0.2]);
  const doubt95 = firstDoubt95(mixture, [0.3, 0.2]);
  const reading = (doubts: number): Lab => {
    const darker = Array.from({ length: 5000 }, (_, i): Lab => [l - i / 100, a, b]);
    return darker.find((lab) => ciede2000([l, a, b], lab) >= doubts * doubt95)!;
  };
  expect(unlikelyTrial(trialOf([0.3, 0.2], reading(1.48)))).toBeUndefined();
  const unlikely = unlikelyTrial(trialOf([0.3, 0.2], reading(1.52)))!;
  expect(unlikely.predicted).toEqual([l, a, b]);
  expect(unlikely.deltaE00 / unlikely.doubt95).toBeCloseTo(1.52, 1);
});
