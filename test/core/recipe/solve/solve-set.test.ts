import { expect, test } from "vitest";
import { ciede2000 } from "../../../../src/core/colour/difference/ciede2000.js";
import type { Lab } from "../../../../src/core/model/batch.js";
import { type Mixture, mixedLab, mixtureOf } from "../../../../src/core/recipe/mixture/mixture.js";
import { isStrongest, solveSet } from "../../../../src/core/recipe/solve/solve-set.js";
import { seeded } from "../../uptake/shade/invented-dyes.js";
import { someDyes } from "../some-dyes.js";

const most = Math.asinh(2 / 0.02);
const strengthAt = (u: number): number => 0.02 * Math.sinh(u);

/** The nearest colour on a grid over the three dyes, then on two finer grids around the best. */
function onGrid(mixture: Mixture, target: Lab): number {
  let [best, least]: [number[], number] = [[0, 0, 0], Number.POSITIVE_INFINITY];
  let [from, to, steps] = [[0, 0, 0], [most, most, most], 15];
  for (let round = 0; round < 3; round++) {
    const at = (axis: number, i: number): number => from[axis]! + ((to[axis]! - from[axis]!) * i) / steps;
    for (let i = 0; i <= steps; i++)
      for (let j = 0; j <= steps; j++)
        for (let k = 0; k <= steps; k++) {
          const u = [at(0, i), at(1, j), at(2, k)];
          const value = ciede2000(target, mixedLab(mixture, u.map(strengthAt)));
          if (value < least) [best, least] = [u, value];
        }
    const width = (axis: number): number => (to[axis]! - from[axis]!) / steps;
    const around = [0, 1, 2].map((axis) => [
      Math.max(0, best[axis]! - width(axis)),
      Math.min(most, best[axis]! + width(axis)),
    ]);
    [from, to, steps] = [around.map(([low]) => low!), around.map(([, high]) => high!), 8];
  }
  return least;
}

test("on 45 problems of three dyes solveSet is nowhere worse than a grid search by 0.05 CIEDE2000", () => {
  const random = seeded(45);
  const problems: number[] = [];
  for (const seed of [11, 12, 13]) {
    const dyes = someDyes(seed, 5);
    for (let i = 0; i < 15; i++) {
      const set = [0, 1, 2].map((n) => dyes[(i + n * (1 + (i % 2))) % 5]!);
      const mixture = mixtureOf(set, 60);
      // A third each: within reach, anywhere, near grey.
      const target: Lab =
        i % 3 === 0
          ? mixedLab(
              mixture,
              [0, 1, 2].map(() => strengthAt(most * random())),
            )
          : [
              20 + 70 * random(),
              (i % 3 === 1 ? 100 : 10) * (random() - 0.5),
              (i % 3 === 1 ? 100 : 10) * (random() - 0.5),
            ];
      problems.push(solveSet(mixture, target).deltaE00 - onGrid(mixture, target));
    }
  }
  expect(problems).toHaveLength(45);
  expect(Math.max(...problems)).toBeLessThanOrEqual(0.05);
});

test("a colour within reach is met", () => {
  const mixture = mixtureOf(someDyes(11, 3), 60);
  const { deltaE00, strengths } = solveSet(mixture, mixedLab(mixture, [0.2, 0.05, 0.6]));
  expect(deltaE00).toBeLessThan(1e-3);
  expect(strengths.every((strength) => strength >= 0 && strength <= 2)).toBe(true);
});

test("concentrates take no more room than the bath has", () => {
  const thin = someDyes(11, 2).map((dye) => ({ ...dye, share: 0.6 }));
  const mixture = mixtureOf(thin, 60);
  const { strengths } = solveSet(mixture, mixedLab(mixture, [1.5, 1.5]));
  expect(0.6 * strengths[0]! + 0.6 * strengths[1]!).toBeLessThanOrEqual(1 + 1e-9);
  expect(0.6 * strengths[0]! + 0.6 * strengths[1]!).toBeGreaterThan(0.95);
});

test("a recipe is the strongest from 99 % of the most that a dye may be", () => {
  expect(isStrongest([0.1, 1.97])).toBe(false);
  expect(isStrongest([0.1, 1.99])).toBe(true);
});
