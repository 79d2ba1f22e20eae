import { expect, test } from "vitest";
import { solveLeastSquares } from "../../src/core/maths/least-squares/linear-least-squares.js";
import { fitNonlinear } from "../../src/core/maths/least-squares/nonlinear-least-squares.js";
import type { LawName } from "../../src/core/model/batch.js";
import { fitLaw } from "../../src/core/uptake/fit/fit-law.js";
import { certifiedSets, observationsOf } from "./nist-sets.js";

const within = (value: number, expected: number, relative: number): void =>
  expect(Math.abs(value / expected - 1)).toBeLessThanOrEqual(relative);

/** Constants of a law that the points must determine; the unit of time is that of the source. */
function constants(law: LawName, data: readonly (readonly [number, number])[]) {
  const fit = fitLaw(
    law,
    data.map(([seconds, uptake]) => ({ seconds, uptake })),
  );
  if (!fit.determined) throw new Error(`${law} is not determined`);
  return { ...fit, rateError: fit.rateError! };
}

test("the oxygen demand of Marske gives the published first-order constants", () => {
  // source: batesWatts1988, table A1.4; standard errors from a refit with a statistics package
  const fit = constants("first-order", [
    [1, 8.3],
    [2, 10.3],
    [3, 19.0],
    [4, 16.0],
    [5, 15.6],
    [7, 19.8],
  ]);
  within(fit.plateau, 19.1426, 1e-4);
  within(fit.ratePerSecond, 0.53109, 1e-4);
  within(fit.plateauError, 2.4959, 1e-3);
  within(fit.rateError, 0.20308, 1e-3);
  within(fit.rateError / fit.ratePerSecond, 0.38239, 1e-3);
  within(fit.residualSum, 25.990267, 1e-6);
  within(Math.sqrt(fit.residualSum / 4), 2.549033, 1e-6);
});

/** min, mg/g: a documented example of a sorption package, fitted by nonlinear least squares elsewhere (source: pupak). */
const sorption = [
  [15, 3.718],
  [30, 3.888],
  [45, 4.102],
  [60, 4.274],
  [75, 4.402],
  [90, 4.444],
  [105, 4.488],
  [120, 4.616],
] as const;

test("a sorption example gives the first-order constants of another program", () => {
  const fit = constants("first-order", sorption);
  within(fit.plateau, 4.35932318, 1e-5);
  within(fit.ratePerSecond, 0.11436282, 1e-5);
  within(fit.plateauError, 0.0875048, 1e-4);
  within(fit.rateError, 0.01920624, 1e-4);
  within(fit.residualSum, 0.2813390926, 1e-8);
});

test("a sorption example gives the second-order constants of another program", () => {
  const fit = constants("second-order", sorption);
  within(fit.plateau, 4.644528282, 1e-5);
  within(fit.plateauError, 0.07956738, 1e-4);
  within(fit.ratePerSecond / fit.plateau, 0.048511901, 1e-5);
  within(fit.residualSum, 0.08164195804, 1e-8);
  // k2 = rate/plateau has an error of its own, which the general fitter gives.
  const general = fitNonlinear({
    start: [4, 0.1],
    residuals: ([q, k]) => sorption.map(([t, y]) => y - (k! * q! * q! * t) / (1 + k! * q! * t)),
  });
  within(general.parameters[1]!, 0.048511901, 1e-5);
  within(general.standardErrors![1]!, 0.009341506, 1e-4);
});

test("the straight line through t/q of the sorption example, which is not the least-squares fit, is that printed", () => {
  const line = solveLeastSquares(
    sorption.map(([t]) => [1, t]),
    sorption.map(([t, q]) => t / q),
  )!;
  within(line.x[1]!, 0.2087124988, 1e-9);
  within(line.x[0]!, 1.3420435211, 1e-9);
});

const treated = [
  [0.02, 76],
  [0.02, 47],
  [0.06, 97],
  [0.06, 107],
  [0.11, 123],
  [0.11, 139],
  [0.22, 159],
  [0.22, 152],
  [0.56, 191],
  [0.56, 201],
  [1.1, 207],
  [1.1, 200],
] as const;

test("a saturation of Langmuir form gives the published constants by law and by general fit", () => {
  // source: batesWatts1988, table A1.3, treated cells
  const law = constants("second-order", treated);
  within(law.plateau, 212.6836, 1e-5);
  within(law.plateauError, 6.947146, 1e-4);
  within(1 / law.ratePerSecond, 0.06412103, 1e-5);
  within(law.rateError / law.ratePerSecond ** 2, 0.008280922, 1e-4);
  within(law.residualSum, 1195.448815, 1e-8);
  const general = fitNonlinear({
    start: [100, 1],
    residuals: ([v, k]) => treated.map(([x, y]) => y - (v! * x) / (k! + x)),
  });
  within(general.parameters[0]!, 212.6836, 1e-5);
  within(general.parameters[1]!, 0.06412103, 1e-5);
  within(general.standardErrors![0]!, 6.947146, 1e-4);
  within(general.standardErrors![1]!, 0.008280922, 1e-4);
  within(Math.sqrt(general.residualSum / general.degreesOfFreedom), 10.93366, 1e-6);
});

test.each([
  ["Misra1a", "first-order"],
  ["Misra1d", "second-order"],
] as const)("%s is the %s law: 9 certified digits without a start", (name, law) => {
  // source: nistStrd
  const set = certifiedSets.find((each) => each.name === name)!;
  const fit = constants(
    law,
    observationsOf(name).map(({ x, y }) => [x, y] as const),
  );
  within(fit.plateau, set.parameters[0]!, 1e-9);
  within(fit.ratePerSecond, set.parameters[1]!, 1e-9);
  within(fit.plateauError, set.deviations[0]!, 1e-8);
  within(fit.rateError, set.deviations[1]!, 1e-8);
  within(fit.residualSum, set.residualSum, 1e-9);
});
