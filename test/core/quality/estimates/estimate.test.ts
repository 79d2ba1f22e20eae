import { expect, test } from "vitest";
import { type Evidence, estimate } from "../../../../src/core/quality/estimates/estimate.js";
import type { Figures, Priors } from "../../../../src/core/quality/estimates/figures.js";

const priors: Priors = {
  timeFactor: { value: 1, deviation: 0.4 },
  uptakePerDm2: { value: 0.03, deviation: 0.7, startDeviation: 1.4 },
  dragOutMlPerDm2: { value: 0.8, deviation: 0.5 },
  strengthExponent: { value: 1.5, deviation: 0.2, held: 2 },
  activationEnergyJPerMol: { value: 75_000, deviation: 0.24 },
  evaporation: { value: 1, deviation: 0.08 },
};

/** Readings of some figures, each so exact. */
const reading = (of: (figures: Figures) => readonly number[], readings = 30): Evidence => ({
  readings,
  residuals: of,
  nextLoadsOff: (sheet, really) => Math.log(sheet.timeFactor / really.timeFactor),
});
const logOf = (name: keyof Figures, value: number, deviation: number) => (figures: Figures) => [
  Math.log(figures[name]! / value) / deviation,
];

test("without readings nothing is told, and everything stays as assumed", () => {
  const { figures, toUse } = estimate(
    reading(() => [], 0),
    priors,
  );
  expect(Object.values(figures).map(({ told, loadsToHalve }) => [told, loadsToHalve])).toEqual(
    Array.from({ length: 5 }, () => [false, null]),
  );
  // The exponent is the law's own.
  expect(figures.strengthExponent.value).toBe(2);
  expect(toUse).toEqual({
    timeFactor: 1,
    uptakePerDm2: 0.03,
    dragOutMlPerDm2: 0.8,
    activationEnergyJPerMol: 75_000,
    evaporation: 1,
  });
});

test("a figure is told below a third of its value and half of what was assumed, and not above", () => {
  const told = (deviation: number, name: "uptakePerDm2" | "dragOutMlPerDm2") =>
    estimate(reading(logOf(name, priors[name].value, deviation)), priors).figures[name].told;
  expect([0.3, 0.4].map((deviation) => told(deviation, "uptakePerDm2"))).toEqual([true, false]);
  // Half of 0.5, with the assumption's own weight: 1/0.25² = 1/0.5² + 1/0.289².
  expect([0.28, 0.3].map((deviation) => told(deviation, "dragOutMlPerDm2"))).toEqual([true, false]);
});

test("an estimate lies between what was read and what was assumed, as their errors weigh", () => {
  const { figures } = estimate(reading(logOf("dragOutMlPerDm2", 1.6, 0.1)), priors);
  const weight = 1 / 0.1 ** 2 / (1 / 0.1 ** 2 + 1 / 0.5 ** 2);
  expect(Math.log(figures.dragOutMlPerDm2.value / 0.8)).toBeCloseTo(weight * Math.log(2), 6);
  expect(figures.dragOutMlPerDm2.standardError / figures.dragOutMlPerDm2.value).toBeCloseTo(
    1 / Math.hypot(1 / 0.1, 1 / 0.5),
    6,
  );
});

test("half the error takes about three times as many loads again", () => {
  const { loadsToHalve } = estimate(reading(logOf("timeFactor", 1.1, 0.02)), priors).figures.timeFactor;
  expect(loadsToHalve).toBe(91);
});

test("readings that scatter more than they should make the errors larger", () => {
  const scatter = (by: number) => (figures: Figures) =>
    [by, -by, by, -by].map((one) => (Math.log(figures.timeFactor) + one * 0.02) / 0.02);
  const error = (by: number) => estimate(reading(scatter(by)), priors).figures.timeFactor.standardError;
  expect(error(3) / error(0.5)).toBeCloseTo(3, 1);
});

test("the time factor makes the next loads as right as all figures together, with what stays as assumed", () => {
  // A dye that is taken up more than assumed, which shows in the last readings and more so in the next loads.
  const slower = ({ timeFactor, uptakePerDm2 }: Figures, late: number) =>
    Math.log(timeFactor) + 0.1 * late * Math.log(uptakePerDm2 / 0.03);
  const nextLoadsOff = (sheet: Figures, really: Figures) => slower(sheet, 2) - slower(really, 2);
  const { figures, toUse, best } = estimate(
    {
      readings: 6,
      nextLoadsOff,
      residuals: (of) => [0, 0, 0, 1, 1, 1].map((late) => (0.16 * late - slower(of, late)) / 0.05),
    },
    priors,
  );
  expect(figures.uptakePerDm2.told).toBe(false);
  expect(best.uptakePerDm2).toBeGreaterThan(0.06);
  expect(toUse.uptakePerDm2).toBe(0.03);
  expect(nextLoadsOff(toUse, best)).toBeCloseTo(0, 9);
  expect(toUse.timeFactor).toBeGreaterThan(best.timeFactor);
});

test("a time factor that steps do not reach stays at the nearest one, which is that of the bath", () => {
  // A bath that a load empties: a little longer, and the next loads get far less.
  const nextLoadsOff = (sheet: Figures, really: Figures) =>
    3 * Math.log(sheet.timeFactor / really.timeFactor) + 0.1 * Math.log(really.uptakePerDm2 / 0.03);
  const { residuals, readings } = reading((of) => [
    (Math.log(of.timeFactor) - 0.2) / 0.05,
    Math.log(of.uptakePerDm2 / 0.06) / 0.8,
  ]);
  const { figures, best } = estimate({ residuals, readings, nextLoadsOff }, priors);
  expect(figures.uptakePerDm2.told).toBe(false);
  expect(nextLoadsOff(best, best)).toBeGreaterThan(0.03);
  expect(figures.timeFactor).toMatchObject({ told: true, value: best.timeFactor });
});

test("a time factor that what stays as assumed pulls by a third is not told", () => {
  // Figures that stay as assumed, the exponent among them, slow the next loads by so much.
  const pulledBy = (pull: number) => {
    const { figures, toUse } = estimate(
      {
        ...reading(logOf("timeFactor", 1.2, 0.02)),
        nextLoadsOff: (sheet, really) =>
          Math.log(sheet.timeFactor / really.timeFactor) - (sheet.strengthExponent === undefined ? pull : 0),
      },
      priors,
    );
    return [figures.timeFactor.told, toUse.timeFactor > 1];
  };
  expect(pulledBy(0.32)).toEqual([true, true]);
  expect(pulledBy(0.34)).toEqual([false, false]);
});

test("a time factor nearer to 1 than half its own error changes nothing", () => {
  const used = (factor: number) =>
    estimate(reading(logOf("timeFactor", factor, 0.02), 4), priors).toUse.timeFactor;
  expect(used(1.009)).toBe(1);
  expect(used(1.011)).toBeGreaterThan(1.01);
});

test("an uptake that is told brings the exponent that it was found with, unless that one is known", () => {
  const exponent = (held: number | undefined) => {
    const { toUse, figures } = estimate(reading(logOf("uptakePerDm2", 0.3, 0.1)), {
      ...priors,
      strengthExponent: { value: 1.5, deviation: 0.2, ...(held === undefined ? {} : { held }) },
    });
    return [toUse.strengthExponent, figures.strengthExponent.withUptake, figures.strengthExponent.value];
  };
  // What is not told keeps the assumed value.
  expect(exponent(2)).toEqual([expect.closeTo(1.5, 6), expect.closeTo(1.5, 6), 2]);
  expect(exponent(undefined)).toEqual([undefined, undefined, 1.5]);
});

test("a time factor whose next loads find no dye is as uncertain as its readings make it", () => {
  const errorBy = (nextLoadsOff: Evidence["nextLoadsOff"]) =>
    estimate({ ...reading(logOf("timeFactor", 1.2, 0.05)), nextLoadsOff }, priors).figures.timeFactor
      .standardError;
  const usual = errorBy(reading(() => []).nextLoadsOff);
  expect(usual).toBeGreaterThan(0.05);
  expect(errorBy(() => 0)).toBeCloseTo(usual, 6);
});

test("a time factor whose next loads cannot be foreseen is as uncertain as before the log", () => {
  const { timeFactor } = estimate(
    { ...reading(logOf("timeFactor", 1.2, 0.05)), nextLoadsOff: () => Number.NaN },
    priors,
  ).figures;
  expect(timeFactor).toMatchObject({ told: false, standardError: 0.4 });
});
