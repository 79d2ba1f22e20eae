import fc from "fast-check";
import { expect, test } from "vitest";
import { exactSum } from "../../../src/core/maths/exact-sum.js";

/** Every finite double is a whole number of 2^-1074: the sum as such, rounded by the language itself. */
function byWholeNumbers(values: readonly number[]): number {
  const whole = (value: number): bigint => {
    const bits = new DataView(new ArrayBuffer(8));
    bits.setFloat64(0, value);
    const raw = bits.getBigUint64(0);
    const exponent = (raw >> 52n) & 0x7ffn;
    const fraction = raw & 0xfffffffffffffn;
    const size = exponent === 0n ? fraction : (fraction | 0x10000000000000n) << (exponent - 1n);
    return raw >> 63n ? -size : size;
  };
  const total = values.map(whole).reduce((sum, value) => sum + value, 0n);
  // Number() of a whole number rounds half to even; two exact steps bring it back to its unit.
  return Number(total) * 2 ** -537 * 2 ** -537;
}

test("the sum of nothing is 0, of one number that number", () => {
  expect(exactSum([])).toBe(0);
  expect(exactSum([-3.5])).toBe(-3.5);
});

test("the sum is the correctly rounded one of exact whole-number arithmetic", () => {
  const value = fc.tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 940, max: 990 }));
  fc.assert(
    fc.property(fc.array(value, { maxLength: 40 }), (list) => {
      const values = list.map(([whole, power]) => whole * 2 ** -power);
      expect(exactSum(values)).toBe(byWholeNumbers(values));
    }),
  );
});

test("the sum is the same in every order", () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: -1e12, max: 1e12, noNaN: true }), { maxLength: 60 }), (values) => {
      const forward = exactSum(values);
      expect(exactSum([...values].reverse())).toBe(forward);
      expect(exactSum([...values].sort((a, b) => a - b))).toBe(forward);
    }),
  );
});

test("a half that plain addition would round the wrong way is decided by what lies below it", () => {
  expect(exactSum([1, 2 ** -53, 2 ** -106])).toBe(1 + 2 ** -52);
  expect(exactSum([1, 2 ** -53, -(2 ** -106)])).toBe(1);
});

test("an infinity or NaN in the sum comes through", () => {
  expect(exactSum([1, Number.POSITIVE_INFINITY, 2])).toBe(Number.POSITIVE_INFINITY);
  expect(exactSum([1, Number.NaN])).toBeNaN();
});
