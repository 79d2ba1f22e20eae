import { expect, test } from "vitest";
import { fitWithPriors } from "../../../../src/core/maths/least-squares/fit-with-priors.js";

test("a straight line with priors is the ridge solution of its normal equations", () => {
  // Residuals (a + b x - y)/0.5 at x = 0, 1, 2 with y = 1, 2, 2; (J'J + I) z = J'y by hand.
  const fit = fitWithPriors(([a, b]) => [1, 2, 2].map((y, x) => (a! + b! * x - y) / 0.5), 2);
  const determinant = 13 * 21 - 12 * 12;
  expect(fit.parameters[0]).toBeCloseTo((20 * 21 - 12 * 24) / determinant, 9);
  expect(fit.parameters[1]).toBeCloseTo((13 * 24 - 12 * 20) / determinant, 9);
  expect(fit.standardErrors[0]).toBeCloseTo(Math.sqrt(21 / determinant), 7);
  // Of a + b: the sum of all four elements of the inverse.
  expect(fit.standardErrorOf([1, 1])).toBeCloseTo(Math.sqrt((21 + 13 - 2 * 12) / determinant), 7);
});

test("without data parameters stay at 0, each 1 uncertain", () => {
  expect(fitWithPriors(() => [], 2)).toMatchObject({
    parameters: [0, 0],
    standardErrors: [1, 1].map((one) => expect.closeTo(one, 9)),
    meanSquare: undefined,
  });
});

test("a bent problem ends at its minimum", () => {
  const fit = fitWithPriors(([z]) => [(Math.exp(z!) - Math.E) / 1e-4], 1);
  expect(fit.parameters[0]).toBeCloseTo(1, 6);
});
