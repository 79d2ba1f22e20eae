import fc from "fast-check";
import { expect, test } from "vitest";
import { deviationOfFactor, logNormalQuantile } from "../../../../src/core/maths/sampling/log-normal.js";
import { normalCdf } from "../../../../src/core/maths/sampling/normal-cdf.js";

const known = fc.record({
  value: fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
  factor: fc.double({ min: 1.01, max: 20, noNaN: true }),
});

test("half of all values lie below the median, and 2.5 % beyond either end of the 95 % range", () => {
  fc.assert(
    fc.property(known, ({ value, factor }) => {
      const at = (u: number) => logNormalQuantile({ value, factor }, u);
      expect(at(0.5)).toBeCloseTo(value, 12);
      expect(at(0.025) / (value / factor)).toBeCloseTo(1, 10);
      expect(at(0.975) / (value * factor)).toBeCloseTo(1, 10);
    }),
  );
});

test("the logarithm of the value that a share lies below is normal with the deviation of the factor", () => {
  fc.assert(
    fc.property(known, fc.double({ min: 1e-3, max: 0.999, noNaN: true }), ({ value, factor }, u) => {
      const z = Math.log(logNormalQuantile({ value, factor }, u) / value) / deviationOfFactor(factor);
      expect(normalCdf(z)).toBeCloseTo(u, 10);
    }),
  );
});

test("a figure that is known to a factor of 1 is known exactly", () => {
  for (const u of [0.001, 0.5, 0.999]) expect(logNormalQuantile({ value: 3, factor: 1 }, u)).toBe(3);
});
