import fc from "fast-check";
import { expect, test } from "vitest";
import { fitNonlinear } from "../../../../src/core/maths/least-squares/nonlinear-least-squares.js";
import { fitLaw, type UptakePoint } from "../../../../src/core/uptake/fit/fit-law.js";
import { lawNames, lawUptake } from "../../../../src/core/uptake/law/laws.js";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rates = number(-6, 1).map((power) => 10 ** power);
const plateaus = number(-3, 4).map((power) => 10 ** power);
const plan = [0.2, 0.5, 1, 1.7, 3];
const noise = [0.03, -0.02, 0.01, -0.03, 0.02];
const inTimes = (law: (typeof lawNames)[number], plateau: number, rate: number): UptakePoint[] =>
  plan.map((x) => ({ seconds: x / rate, uptake: plateau * lawUptake(law, x) }));

for (const law of lawNames.filter((name) => name !== "parabolic")) {
  test(`the constants of exact ${law} readings come back, whatever their size, without a start`, () => {
    fc.assert(
      fc.property(plateaus, rates, (plateau, rate) => {
        const fit = fitLaw(law, inTimes(law, plateau, rate));
        if (!fit.determined) throw new Error("not determined");
        expect(fit.plateau / plateau).toBeCloseTo(1, 9);
        expect(fit.ratePerSecond / rate).toBeCloseTo(1, 9);
      }),
      { numRuns: 500 },
    );
  });

  test(`${law} constants and errors from noisy readings are those of the general fitter`, () => {
    const points = inTimes(law, 1, 0.01).map((p, i) => ({ ...p, uptake: p.uptake + noise[i]! }));
    const fit = fitLaw(law, points);
    if (!fit.determined) throw new Error("not determined");
    const general = fitNonlinear({
      start: [0.8, 0.02],
      residuals: ([plateau, rate]) =>
        points.map((p) => p.uptake - plateau! * lawUptake(law, rate! * p.seconds)),
    });
    expect(fit.plateau / general.parameters[0]!).toBeCloseTo(1, 9);
    expect(fit.ratePerSecond / general.parameters[1]!).toBeCloseTo(1, 9);
    expect(fit.plateauError / general.standardErrors![0]!).toBeCloseTo(1, 7);
    expect(fit.rateError! / general.standardErrors![1]!).toBeCloseTo(1, 7);
    expect(fit.residualSum / general.residualSum).toBeCloseTo(1, 10);
  });
}

test("the parabolic law gives the fitted uptake at the longest time and holds its rate", () => {
  const fit = fitLaw("parabolic", [
    { seconds: 25, uptake: 1 },
    { seconds: 100, uptake: 2 },
    { seconds: 400, uptake: 4 },
  ]);
  expect(fit).toMatchObject({ determined: true, ratePerSecond: 1 / 400, rateError: undefined });
  expect(fit.determined && fit.plateau).toBeCloseTo(4, 12);
});

test("of two valleys of the residual sum the deeper one is taken", () => {
  const steps = [
    [1, 0.5],
    [4, 4.5],
    [25, 5.5],
    [519, 9.5],
  ] as const;
  const fit = fitLaw(
    "first-order",
    steps.map(([seconds, uptake]) => ({ seconds, uptake })),
  );
  // A scan of the rate in steps of 10 % finds valleys of 9.122 and 8.593.
  expect(fit.residualSum).toBeLessThan(8.593);
  expect(fit.residualSum).toBeGreaterThan(8.58);
});

test("the order of the readings does not matter", () => {
  const points = inTimes("first-order", 1, 0.01).map((p, i) => ({ ...p, uptake: p.uptake + noise[i]! }));
  for (const law of lawNames) {
    const [forward, back] = [fitLaw(law, points), fitLaw(law, points.toReversed())];
    if (!forward.determined || !back.determined) throw new Error("not determined");
    expect(back.plateau / forward.plateau).toBeCloseTo(1, 10);
    expect(back.ratePerSecond / forward.ratePerSecond).toBeCloseTo(1, 10);
  }
});

test("readings on a straight line leave the rate open on the slow side, level ones on the fast side", () => {
  const line = [10, 20, 30, 40].map((seconds) => ({ seconds, uptake: seconds / 7 }));
  const level = [10, 20, 30, 40].map((seconds) => ({ seconds, uptake: seconds === 20 ? 3.01 : 3 }));
  expect(fitLaw("first-order", line)).toMatchObject({ determined: false, limit: "still-rising" });
  expect(fitLaw("second-order", line)).toMatchObject({ determined: false, limit: "still-rising" });
  expect(fitLaw("first-order", [...level, { seconds: 5, uptake: 3.02 }])).toMatchObject({
    determined: false,
    limit: "already-level",
  });
});
