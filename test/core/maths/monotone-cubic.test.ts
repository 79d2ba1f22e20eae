import fc from "fast-check";
import { expect, test } from "vitest";
import { monotoneCubic } from "../../../src/core/maths/monotone-cubic.js";

const steps = fc.array(
  fc.tuple(fc.double({ min: 0.01, max: 5, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true })),
  {
    minLength: 2,
    maxLength: 12,
  },
);
const pathOf = (list: readonly (readonly [number, number])[]) => {
  const x = list.map((_, i) => list.slice(0, i + 1).reduce((sum, step) => sum + step[0], 0));
  const y = list.map((_, i) => list.slice(0, i + 1).reduce((sum, step) => sum + step[1], 0));
  return { x, y };
};

test("the curve passes through every point", () => {
  fc.assert(
    fc.property(steps, (list) => {
      const { x, y } = pathOf(list);
      const curve = monotoneCubic(x, y);
      x.forEach((at, i) => {
        expect(curve(at)).toBeCloseTo(y[i]!, 12);
      });
    }),
  );
});

test("between two points the curve only rises or only falls, within the two values", () => {
  fc.assert(
    fc.property(steps, (list) => {
      const { x, y } = pathOf(list);
      const curve = monotoneCubic(x, y);
      for (let i = 0; i + 1 < x.length; i += 1) {
        const sign = Math.sign(y[i + 1]! - y[i]!);
        let before = y[i]!;
        for (let k = 1; k <= 20; k += 1) {
          const value = curve(x[i]! + ((x[i + 1]! - x[i]!) * k) / 20);
          expect(sign * (value - before)).toBeGreaterThanOrEqual(-1e-12);
          before = value;
        }
      }
    }),
  );
});

test("a straight line stays straight and one point stays constant", () => {
  expect(monotoneCubic([0, 1, 3], [1, 3, 7])(2.3)).toBeCloseTo(5.6, 14);
  expect(monotoneCubic([4], [2])(1)).toBe(2);
  expect(monotoneCubic([4], [2])(Number.NaN)).toBeNaN();
});

test("a slope too steep for its neighbour is cut back to the circle of radius 3", () => {
  // Secants 0.1, 4.9, 0.1: slopes 0.1 and 2.5 at the first two points, cut by 3 / hypot(1, 25).
  const curve = monotoneCubic([0, 1, 2, 3], [0, 0.1, 5, 5.1]);
  const cut = 3 / Math.hypot(1, 25);
  expect((curve(1e-7) - curve(0)) / 1e-7).toBeCloseTo(0.1 * cut, 6);
  expect((curve(1) - curve(1 - 1e-7)) / 1e-7).toBeCloseTo(2.5 * cut, 6);
});

test("the slope does not jump at a point", () => {
  const curve = monotoneCubic([0, 1, 2, 4], [0, 2, 3, 9]);
  for (const at of [1, 2]) {
    const left = (curve(at) - curve(at - 1e-6)) / 1e-6;
    const right = (curve(at + 1e-6) - curve(at)) / 1e-6;
    expect(left - right).toBeCloseTo(0, 4);
  }
});
