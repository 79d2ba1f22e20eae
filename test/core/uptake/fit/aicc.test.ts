import { expect, test } from "vitest";
import { aicc } from "../../../../src/core/uptake/fit/aicc.js";

test("a further constant costs more the fewer points there are, and is not allowed with too few", () => {
  const price = (points: number): number =>
    aicc({ residualSum: 1, points, parameters: 2 })! - aicc({ residualSum: 1, points, parameters: 1 })!;
  expect(price(6)).toBeCloseTo(10, 12);
  expect(price(1e6)).toBeCloseTo(2, 4);
  expect(price(6)).toBeGreaterThan(price(12));
  expect(aicc({ residualSum: 1, points: 3, parameters: 1 })).toBeUndefined();
  expect(aicc({ residualSum: 1, points: 4, parameters: 1 })).toBeDefined();
});
