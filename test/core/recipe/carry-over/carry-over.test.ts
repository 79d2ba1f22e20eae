import { expect, test } from "vitest";
import { ciede2000 } from "../../../../src/core/colour/difference/ciede2000.js";
import {
  carryOverShift,
  type Liquor,
  rinsesUnseen,
  tracelessStrength,
  unseenShift,
} from "../../../../src/core/recipe/carry-over/carry-over.js";
import { leastHarmOrder } from "../../../../src/core/recipe/carry-over/least-harm-order.js";
import type { MixDye } from "../../../../src/core/recipe/mixture/mix-dye.js";
import { mixedLab, mixtureOf } from "../../../../src/core/recipe/mixture/mixture.js";
import { seeded } from "../../uptake/shade/invented-dyes.js";
import { someDyes } from "../some-dyes.js";

const dyes = someDyes(41, 3);
const fresh = (i: number, strength = 1): Liquor => ({
  name: dyes[i]!.name,
  dyes: [dyes[i]!],
  strengths: [strength],
});
const carried = { carriedMl: 50, bathMl: 5000, rinseMl: 450 };

test("liquor of another dye adds s r/V to the next bath", () => {
  const pair = mixtureOf([dyes[1]!, dyes[0]!], 60);
  const expected = ciede2000(mixedLab(pair, [0.2, 0]), mixedLab(pair, [0.2, 0.01]));
  expect(carryOverShift(fresh(0), fresh(1, 0.2), 60, carried)).toBeCloseTo(expected, 6);
  expect(expected).toBeGreaterThan(0.1);
});

test("each rinse leaves D/(D + W) of it", () => {
  const bare = carryOverShift(fresh(0), fresh(1, 0.2), 60, { ...carried, carriedMl: 5, rinseMl: 0 });
  expect(carryOverShift(fresh(0), fresh(1, 0.2), 60, carried, 1)).toBeCloseTo(bare, 9);
});

test("rinsesUnseen is the fewest that keep the shift under 0.3", () => {
  const pale = fresh(1, 0.05);
  const n = rinsesUnseen(fresh(0), pale, 60, carried);
  expect(n).toBeGreaterThan(0);
  expect(carryOverShift(fresh(0), pale, 60, carried, n)).toBeLessThanOrEqual(unseenShift);
  expect(carryOverShift(fresh(0), pale, 60, carried, n - 1)).toBeGreaterThan(unseenShift);
  expect(rinsesUnseen(fresh(1), fresh(1), 60, { ...carried, carriedMl: 1 })).toBe(0);
});

test("what a rinsed basket brings is so little that no colour is shifted by as much as is seen", () => {
  // Just as strong in the next bath as is still looked at.
  const trace = { carriedMl: 5000 * tracelessStrength, bathMl: 5000, rinseMl: 0 };
  const shifts = [3, 17, 29].flatMap((seed) => {
    const some = someDyes(seed, 6);
    const liquor = (dye: MixDye, strength: number): Liquor => ({
      name: dye.name,
      dyes: [dye],
      strengths: [strength],
    });
    return some.flatMap((last) =>
      some
        .filter((next) => next !== last)
        .flatMap((next) =>
          [0.01, 0.1, 1].map((strength) =>
            carryOverShift(liquor(last, 1), liquor(next, strength), 30, trace),
          ),
        ),
    );
  });
  expect(Math.max(...shifts)).toBeLessThan(unseenShift / 10);
  expect(Math.max(...shifts)).toBeGreaterThan(0);
});

function* orders(left: readonly number[]): Generator<readonly number[]> {
  if (left.length === 0) yield [];
  for (const one of left)
    for (const rest of orders(left.filter((other) => other !== one))) yield [one, ...rest];
}

test("leastHarmOrder is the best of all orders", () => {
  const random = seeded(9);
  for (let n = 1; n <= 6; n++) {
    const harms = Array.from({ length: n }, () => Array.from({ length: n }, random));
    const sum = (order: readonly number[]): number =>
      order.slice(1).reduce((total, next, i) => total + harms[order[i]!]![next]!, 0);
    const best = Math.min(...[...orders(harms.map((_, i) => i))].map(sum));
    expect(sum(leastHarmOrder(harms))).toBeCloseTo(best, 12);
  }
  expect(leastHarmOrder([])).toEqual([]);
});

test("a guest whose swatches were dyed cooler and on another white changes neither the dip nor what is dyed", () => {
  const [soiling] = fresh(0).dyes;
  const yellowed = { ...soiling!, baseKs: soiling!.baseKs.map((ks) => 1.3 * ks) };
  const cooler = { ...soiling!.model.dye, celsius: 60 };
  const shift = (dye: MixDye, strength = 1): number =>
    carryOverShift({ ...fresh(0, strength), dyes: [dye] }, fresh(1, 0.2), 60, carried);
  expect(shift(yellowed)).toBe(shift(soiling!));
  expect(shift({ ...soiling!, model: { ...soiling!.model, dye: cooler } }, 0)).toBe(0);
});
