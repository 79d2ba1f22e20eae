import { expect, test } from "vitest";
import type { MixDye } from "../../../../src/core/recipe/mixture/mix-dye.js";
import { mixedLab, mixtureOf } from "../../../../src/core/recipe/mixture/mixture.js";
import { amountOf, pouredFor, strengthOf, tooLittle } from "../../../../src/core/recipe/solve/amounts.js";
import { changesBy } from "../../../../src/core/recipe/solve/changes.js";
import { firstDoubt95, triedDoubt95 } from "../../../../src/core/recipe/solve/doubt.js";
import {
  findRecipes,
  type Recipe,
  recipeOf,
  setsOf,
} from "../../../../src/core/recipe/solve/find-recipes.js";
import { ranked } from "../../../../src/core/recipe/solve/rank.js";
import { someDyes } from "../some-dyes.js";

const dyes = someDyes(21, 4);
const wish = (strengths: readonly number[], coldMl = 5840) => ({
  target: mixedLab(mixtureOf(dyes.slice(0, strengths.length), 60), strengths),
  seconds: 60,
  coldMl: () => coldMl,
});

test("four dyes have 14 sets of one to three, ten have 175", () => {
  const count = (n: number): number =>
    [1, 2, 3].reduce((sum, size) => sum + [...setsOf(Array(n).fill(dyes[0]), size)].length, 0);
  expect(count(4)).toBe(14);
  expect(count(10)).toBe(175);
});

test("findRecipes finds the two dyes that a colour was made of", () => {
  const best = ranked(findRecipes(dyes, wish([0.3, 0.2])), () => undefined)[0]!.recipe;
  expect(best.mixture.dyes.map(({ name }) => name)).toEqual(["dye 1", "dye 2"]);
  expect(best.deltaE00).toBeLessThan(1e-3);
  expect(best.strengths[0]).toBeCloseTo(0.3, 3);
});

test("a dye of which there would be less than 0.5 mL is left out, and the rest solved again", () => {
  // The fraction is 10 %: a strength of 0.001 in 5 L is 0.5 mL.
  expect(tooLittle(dyes[0]!, 0.000999, 5000)).toBe(true);
  expect(tooLittle(dyes[0]!, 0.001001, 5000)).toBe(false);
  const asked = wish([0.3, 0.2, 0.004], 1000);
  const recipe = recipeOf(dyes.slice(0, 3), asked, undefined, [0.3, 0.2, 0.004])!;
  expect(recipe.mixture.dyes.map(({ name }) => name)).toEqual(["dye 1", "dye 2"]);
  expect(recipe.deltaE00).toBeLessThan(0.3);
  for (const { mixture, strengths } of findRecipes(dyes, asked))
    mixture.dyes.forEach((dye, i) => {
      expect(tooLittle(dye, strengths[i]!, 1000)).toBe(false);
    });
});

test("amounts are the strength times the dye's own fraction of the cold volume, water fills up", () => {
  expect(amountOf(dyes[0]!, 0.3, 6000)).toBeCloseTo(180, 9);
  expect(strengthOf(dyes[0]!, 180, 6000)).toBeCloseTo(0.3, 12);
  const poured = pouredFor(dyes.slice(0, 2), [0.3, 0.2], 6000);
  expect(poured.dyes.map(({ amount }) => amount)).toEqual([180, 120].map((ml) => expect.closeTo(ml, 9)));
  expect(poured.waterMl).toBeCloseTo(5700, 9);
});

const made = (deltaE00: number, strengths: readonly number[]): Recipe => ({
  mixture: mixtureOf(dyes.slice(0, strengths.length), 60),
  strengths,
  deltaE00,
  lab: [50, 0, 0],
});

test("within 0.3 of the best fewer dyes come first, beyond it the smaller difference", () => {
  const three = made(0, [0.2, 0.2, 0.2]);
  const two = made(0.3, [0.2, 0.2]);
  const one = made(0.31, [0.2]);
  const order = ranked([one, two, three], () => undefined);
  expect(order.map(({ recipe }) => recipe)).toEqual([two, three, one]);
  expect(order.map(({ group }) => group)).toEqual([0, 0, 1]);
});

test("of as many dyes the recipe that a tenth more dye moves least comes first, then the cheaper", () => {
  const [steady, moved] = [made(0, [0.05, 0.05]), made(0, [0.6, 0.6])];
  const size = ({ mixture, strengths }: Recipe): number => Math.hypot(...changesBy(mixture, strengths, 0.1));
  expect(size(steady)).toBeLessThan(size(moved));
  expect(ranked([moved, steady], () => undefined)[0]!.recipe).toBe(steady);
  const same = { ...steady };
  expect(ranked([steady, same], (recipe) => (recipe === same ? 1 : 2))[0]!.recipe).toBe(same);
});

test("the doubt of a first dip is 1.96 √(Σ (change by 22 %)² + 0.5²), that after a trial goes by the step from it", () => {
  const { mixture, strengths } = made(0, [0.3, 0.2]);
  const changes = changesBy(mixture, strengths, 0.22);
  expect(firstDoubt95(mixture, strengths)).toBeCloseTo(1.959964 * Math.hypot(0.5, ...changes), 5);
  const tried = (first: number) => ({
    strengths: new Map([
      ["dye 1", first],
      ["dye 2", 0.2],
    ]),
  });
  expect(triedDoubt95(mixture, strengths, [tried(0.3)])).toBeCloseTo(1.959964 * 0.4, 5);
  const far = triedDoubt95(mixture, strengths, [tried(0.1)]);
  expect(far).toBeGreaterThan(1.959964 * 0.4);
  expect(far).toBeLessThan(firstDoubt95(mixture, strengths));
  expect(triedDoubt95(mixture, strengths, [tried(0.1), tried(0.29)])).toBeLessThan(far);
});

test("where every reflectance was measured the doubt is smaller, but not on another base", () => {
  const dyes = someDyes(8, 2, "spectrophotometer");
  const strengths = [0.3, 0.2];
  const of = (some: readonly MixDye[]) => mixtureOf(some, 60);
  const mixture = of(dyes);
  const changes = changesBy(mixture, strengths, 0.18);
  expect(firstDoubt95(mixture, strengths)).toBeCloseTo(1.959964 * Math.hypot(0.5, ...changes), 5);
  const tried = [{ strengths: new Map(dyes.map(({ name }, i) => [name, strengths[i]!])) }];
  expect(triedDoubt95(mixture, strengths, tried)).toBeCloseTo(1.959964 * 0.3, 5);
  const elsewhere = of(dyes.with(1, { ...dyes[1]!, ownBase: false }));
  expect(triedDoubt95(elsewhere, strengths, tried)).toBeCloseTo(1.959964 * 0.4, 5);
});
