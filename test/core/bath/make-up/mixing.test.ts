import fc from "fast-check";
import { expect, test } from "vitest";
import { alligation, weakerToAdd } from "../../../../src/core/bath/make-up/mixing.js";
import { filledInSeries, washedOut } from "../../../../src/core/bath/rinse/wash-out.js";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test("alligation gives the total and its dye, for any strength between the two", () => {
  fc.assert(
    fc.property(number(0, 40), number(1, 50), number(0, 1), number(0.1, 50), (weaker, span, share, total) => {
      const stronger = weaker + span;
      const target = Math.min(stronger, weaker + share * span);
      const mix = alligation({ weaker, stronger, target, total })!;
      expect(mix.weaker + mix.stronger).toBeCloseTo(total, 10);
      expect(mix.weaker * weaker + mix.stronger * stronger).toBeCloseTo(total * target, 8);
    }),
  );
});

test("a strength outside the two, or out of reach by thinning, is undefined", () => {
  expect(alligation({ weaker: 10, stronger: 20, target: 25, total: 1 })).toBeUndefined();
  expect(alligation({ weaker: 20, stronger: 20, target: 20, total: 1 })).toBeUndefined();
  expect(weakerToAdd({ volume: 1, strength: 40, weaker: 0, target: 50 })).toBeUndefined();
  expect(weakerToAdd({ volume: 1, strength: 40, weaker: 10, target: 10 })).toBeUndefined();
});

test("the first tank in a row fills as a tank washes out, and later ones lag", () => {
  for (const x of [0.1, 1, 3]) {
    expect(filledInSeries(1, x)).toBeCloseTo(1 - washedOut(1, { flow: 1, volume: 1 }, x), 14);
    expect(filledInSeries(3, x)).toBeLessThan(filledInSeries(2, x));
  }
});
