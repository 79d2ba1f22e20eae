import fc from "fast-check";
import { expect, test } from "vitest";
import { lawInverse, lawLogSlope, lawNames, lawUptake } from "../../../../src/core/uptake/law/laws.js";

const arguments_ = fc.double({ min: -12, max: 2.5, noNaN: true }).map((power) => 10 ** power);

for (const law of lawNames) {
  test(`${law} starts at 0, grows, and its inverse gives the argument back`, () => {
    expect(lawUptake(law, 0)).toBe(0);
    expect(lawInverse(law, 0)).toBe(0);
    fc.assert(
      fc.property(arguments_, fc.double({ min: 1, max: 10, noNaN: true }), (x, factor) => {
        const uptake = lawUptake(law, x);
        expect(lawUptake(law, x * factor)).toBeGreaterThanOrEqual(uptake);
        if (law !== "parabolic" && uptake > 0.99) return;
        expect(lawInverse(law, uptake)! / x).toBeCloseTo(1, 11);
      }),
    );
  });

  test(`${law} has the slope over ln x that a central difference gives`, () => {
    for (const x of [1e-6, 0.01, 0.3, 1, 4, 9]) {
      const step = 1e-5;
      const difference =
        (lawUptake(law, x * Math.exp(step)) - lawUptake(law, x * Math.exp(-step))) / (2 * step);
      expect(lawLogSlope(law, x) / difference).toBeCloseTo(1, 6);
    }
    expect(lawLogSlope(law, 0)).toBe(0);
  });
}

test("every law but the parabolic ends at 1 and reaches no more", () => {
  for (const law of lawNames.filter((name) => name !== "parabolic")) {
    expect(lawUptake(law, Number.POSITIVE_INFINITY)).toBe(1);
    expect(lawInverse(law, 1)).toBeUndefined();
    expect(lawInverse(law, Number.NaN)).toBeUndefined();
  }
  expect(lawInverse("parabolic", 3)).toBe(9);
});
