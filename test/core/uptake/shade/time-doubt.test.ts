import { expect, test } from "vitest";
import { halfWidth95 } from "../../../../src/core/maths/sampling/half-width-95.js";
import type { Dye, Lab, LawName } from "../../../../src/core/model/batch.js";
import { slowing } from "../../../../src/core/uptake/law/slowing.js";
import { type TimeDoubt, timeDoubt } from "../../../../src/core/uptake/shade/time-doubt.js";
import type { BathResponse } from "../../../../src/core/uptake/swatches/bath-response.js";
import type { LeaveOneOut } from "../../../../src/core/uptake/swatches/choose-law.js";
import { labAfter, shadeCurve } from "../../../../src/core/uptake/swatches/shade-curve.js";
import { swatchSet } from "../../../../src/core/uptake/swatches/swatch-curves.js";
import { dye } from "../../plan/sample.js";

const labs: readonly (readonly [number, Lab])[] = [
  [15, [80.2, 21.7, 9.8]],
  [60, [65.9, 44.6, 23.0]],
  [180, [55.2, 55.9, 31.8]],
];
const read = {
  ...dye,
  base: { name: "white", lab: [92.1, -0.6, -2.3] as const },
  swatches: labs.map(([seconds, lab]) => ({ seconds, colour: { kind: "lab" as const, lab } })),
};
const set = swatchSet(read as Dye);
if (!set.ok) throw new Error(set.faults[0]!.message);
const curve = shadeCurve(set.value, "first-order");
const target = labAfter(curve, 100);

const tried = (law: LawName, mean: number, median = 0): LeaveOneOut => ({ law, mean, median, max: mean });
const fresh = { strength: 1, celsius: read.celsius };
const modelOf = (...errors: LeaveOneOut[]) => ({
  dye: read as Dye,
  uptake: { ...curve, referenceCelsius: read.celsius, activationEnergyJPerMol: 75_000 },
  longestSeconds: 300,
  chosen: { curve, tried: errors },
  onlySwatch: null,
  response: {},
  rate: "fitted" as const,
});
/** The doubt of the time for the target, by what the laws' leave-one-out errors are taken to be. */
const doubt = (...errors: LeaveOneOut[]) =>
  timeDoubt(modelOf(...errors), target, 100, fresh, { timingSeconds: 2 });
const width = (found: TimeDoubt): number => Math.log(found.factors95[1] / found.factors95[0]);

test("a second law widens the interval while its mean error is within 0.3 CIEDE2000 of the best", () => {
  const alone = doubt(tried("first-order", 1));
  const beside = (mean: number): number =>
    width(doubt(tried("first-order", 1), tried("parabolic", mean))) / width(alone);
  expect(beside(1.299)).toBeGreaterThan(1.01);
  expect(beside(1.301)).toBe(1);
});

test("noise is 0.3 per axis until the leave-one-out median is over 0.79, and grows by 1 for each 1.3 beyond", () => {
  const noise = (median: number): number => doubt(tried("first-order", 1, median)).noise;
  expect(noise(0.78)).toBe(0.3);
  expect(noise(0.8)).toBeCloseTo(0.4 / 1.3, 12);
  expect(noise(1.7)).toBeCloseTo(1, 12);
  expect(noise(3)).toBeCloseTo(2, 12);
});

/** The half-width of ln t that the strength of a bath adds, on the high side: what is more than at full strength. */
function strengthWidth(response: BathResponse, trialFreshSeconds?: number): number {
  const trial = trialFreshSeconds && {
    lab: labAfter(curve, trialFreshSeconds),
    seconds: trialFreshSeconds,
    freshSeconds: trialFreshSeconds,
  };
  const high = (strength: number): number =>
    Math.log(
      timeDoubt(
        { ...modelOf(tried("first-order", 1)), response },
        target,
        100,
        { strength, celsius: read.celsius },
        { timingSeconds: 2, trial: trial || undefined },
      ).factors95[1],
    );
  return Math.sqrt(high(0.5) ** 2 - high(1) ** 2);
}

test("a trial says nothing of the strength exponent from a dip an eighth as long, and half of it at the root of that", () => {
  const untried = strengthWidth({});
  const share = (times: number): number => strengthWidth({}, 100 / times) / untried;
  expect(share(9)).toBeCloseTo(1, 6);
  expect(share(8.05)).toBeCloseTo(1, 6);
  expect(share(7.95)).toBeLessThan(0.9985);
  expect(share(Math.sqrt(8))).toBeCloseTo(0.5, 6);
});

test("an exponent that is measured exactly is still uncertain by 0.1, one standard deviation; so is the end 2", () => {
  const measured = (standardError: number): number =>
    strengthWidth({ strengthExponent: { value: 1, standardError } });
  expect(measured(0)).toBeCloseTo(halfWidth95 * 0.1 * Math.LN2, 6);
  expect(measured(0.1)).toBeCloseTo(halfWidth95 * 0.1 * Math.SQRT2 * Math.LN2, 6);
  // Without a measured exponent the interval reaches from the time that the law gives to that of exponent 2.
  const beyondLaw = 2 * Math.LN2 - Math.log(slowing(modelOf().uptake, 100, 0.5));
  expect(strengthWidth({})).toBeCloseTo(Math.hypot(beyondLaw, halfWidth95 * 0.1 * Math.LN2), 6);
});
