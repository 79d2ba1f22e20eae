import fc from "fast-check";
import { expect, test } from "vitest";
import { wearingDepth } from "../../../../src/core/recipe/mixed-bath/wearing-depth.js";
import { uptakeAtStrength } from "../../../../src/core/uptake/law/isotherm.js";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

test("wearingDepth solves D = q a(s (1 - c D)), with and without saturation", () => {
  fc.assert(
    fc.property(
      real(0.001, 3),
      real(0.001, 2),
      real(0, 0.6),
      fc.option(real(0.05, 5), { nil: undefined }),
      (depthAtOne, strength, halfSpent, saturation) => {
        const depth = wearingDepth(depthAtOne, strength, halfSpent, saturation);
        const during = strength * (1 - halfSpent * depth);
        expect(depth).toBeGreaterThan(0);
        expect(during).toBeGreaterThanOrEqual(0);
        expect(depth).toBeCloseTo(depthAtOne * uptakeAtStrength(during, saturation), 9);
      },
    ),
    { seed: 4, endOnFailure: true },
  );
});

test("a dye that is used up, or a dip of no time, gives no depth", () => {
  expect(wearingDepth(0.8, 0, Number.POSITIVE_INFINITY)).toBe(0);
  expect(wearingDepth(0, 0.5, 0.1)).toBe(0);
});
