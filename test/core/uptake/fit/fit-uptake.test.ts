import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { UptakePoint } from "../../../../src/core/uptake/fit/fit-law.js";
import { fitUptake } from "../../../../src/core/uptake/fit/fit-uptake.js";
import { lawNames, lawUptake } from "../../../../src/core/uptake/law/laws.js";

const times = [15, 30, 60, 120, 240, 480];
const exact = (law: (typeof lawNames)[number]): UptakePoint[] =>
  times.map((seconds) => ({ seconds, uptake: 3 * lawUptake(law, 0.008 * seconds) }));
const points = (...pairs: readonly (readonly [number, number])[]): UptakePoint[] =>
  pairs.map(([seconds, uptake]) => ({ seconds, uptake }));
const codes = (list: readonly UptakePoint[]) =>
  fitUptake(list).faults.map(({ severity, code }) => `${severity} ${code}`);

test.each(lawNames)("readings that follow %s are best fitted by it", (law) => {
  const fit = fitUptake(exact(law));
  if (!fit.ok) throw new Error("no fit");
  expect(fit.value.law).toBe(law);
  expect(fit.faults).toEqual([]);
  expect(fit.value.perLaw.map((each) => each.law)).toEqual(lawNames);
  expect(fit.value).toMatchObject(fit.value.perLaw.find((each) => each.law === law)!);
  for (const each of fit.value.perLaw) expect(fit.value.aicc).toBeLessThanOrEqual(each.aicc!);
  const { plateau, rate } = fit.value.parameters!;
  expect(plateau * Math.sqrt(rate)).toBeCloseTo(3 * Math.sqrt(0.008), 9);
});

test("the half time is the time at half the plateau, and the parabolic law has none", () => {
  for (const law of lawNames) {
    const fit = fitUptake(exact(law));
    if (!fit.ok) throw new Error("no fit");
    if (law === "parabolic") expect(fit.value.halfTime).toBeUndefined();
    else expect(lawUptake(law, fit.value.parameters!.rate * fit.value.halfTime!)).toBeCloseTo(0.5, 12);
  }
});

test("exact readings give a finite AICc", () => {
  const fit = fitUptake(points([1, 1], [4, 2], [16, 4], [64, 8], [256, 16]));
  expect(fit.ok && fit.value).toMatchObject({ law: "parabolic", residualSum: 0 });
  expect(fit.ok && Number.isFinite(fit.value.aicc)).toBe(true);
});

test("with three or four points residual variance chooses and a warning says so", () => {
  const fit = fitUptake(exact("second-order").slice(1, 5));
  expect(fit.ok && fit.value.law).toBe("second-order");
  expect(codes(exact("second-order").slice(1, 5))).toEqual(["warning fit-few-points"]);
  expect(codes(exact("second-order").slice(2, 5))).toEqual(["warning fit-few-points"]);
});

describe("what a person can hand over", () => {
  test("fewer than three points is an error", () => {
    expect(codes([])).toEqual(["error fit-too-few"]);
    expect(codes(points([10, 1], [20, 2]))).toEqual(["error fit-too-few"]);
  });
  test("equal uptakes at all times are an error", () => {
    expect(codes(points([10, 2], [20, 2], [30, 2]))).toEqual(["error fit-all-equal"]);
  });
  test("one time only is an error, also beside time 0", () => {
    expect(codes(points([60, 2], [60, 2.1], [60, 1.9]))).toEqual(["error fit-few-times"]);
    expect(codes(points([0, 0], [60, 2.1], [60, 1.9]))).toEqual(["error fit-few-times"]);
  });
  test("negative times and values that are not finite are errors, each with its place", () => {
    const fit = fitUptake([
      { seconds: -5, uptake: 1, row: 2 },
      { seconds: 10, uptake: Number.NaN },
      { seconds: Number.POSITIVE_INFINITY, uptake: 3, row: 4 },
    ]);
    expect(fit.ok).toBe(false);
    expect(fit.faults.map(({ code, path }) => [code, ...path])).toEqual([
      ["fit-negative-time", "row", 2],
      ["fit-not-finite", "points", 1],
      ["fit-not-finite", "row", 4],
    ]);
  });
  test("times out of order are fitted all the same, with a warning at the place", () => {
    const sorted = fitUptake(exact("first-order"));
    const mixed = fitUptake(
      exact("first-order").with(1, exact("first-order")[2]!).with(2, exact("first-order")[1]!),
    );
    expect(mixed.faults).toMatchObject([
      { code: "fit-time-order", severity: "warning", path: ["points", 2] },
    ]);
    if (!mixed.ok || !sorted.ok) throw new Error("no fit");
    expect(mixed.value.parameters!.rate).toBeCloseTo(sorted.value.parameters!.rate, 12);
  });
  test("uptake that falls on the whole is an error that names the likely mistake", () => {
    expect(codes(points([10, 50], [20, 40], [40, 33], [80, 30]))).toEqual(["error fit-falls"]);
    expect(codes(points([10, -3], [20, -2], [40, -1]))).toEqual(["error fit-negative-uptake"]);
    expect(codes(points([10, -9], [20, -8], [40, -7], [50, -1], [80, 0.1])).at(-1)).toMatch(/^error/);
  });
  test("a single step down is taken as noise, with a warning", () => {
    expect(codes(points([10, 1], [20, 1.8], [40, 1.7], [80, 2.6], [160, 2.7]))).toContain(
      "warning fit-falls-between",
    );
  });
  test("uptake at time 0 that is not 0 is warned of", () => {
    expect(codes([{ seconds: 0, uptake: 0.4 }, ...exact("first-order")])).toContain(
      "warning fit-start-not-zero",
    );
    expect(codes([{ seconds: 0, uptake: 0 }, ...exact("first-order")])).toEqual([]);
  });
  test("a straight line has no plateau to give, and the help asks for longer times", () => {
    const fit = fitUptake(points([10, 1], [20, 2], [30, 3], [40, 4], [50, 5]));
    expect(fit.ok).toBe(false);
    expect(fit.faults).toMatchObject([{ code: "fit-no-plateau", help: expect.stringContaining("longer") }]);
  });
  test("readings that are all on the plateau have no rate to give, and the help asks for shorter times", () => {
    const fit = fitUptake(
      points([0, 0], [100, 5.001], [200, 4.999], [300, 5.002], [400, 4.998], [500, 5.002]),
    );
    expect(fit.ok).toBe(false);
    expect(fit.faults.at(-1)).toMatchObject({
      code: "fit-no-rise",
      help: expect.stringContaining("shorter"),
    });
  });
  test("a rate with a standard error over half of it, and a half time past the longest, are warned of", () => {
    const early = [5, 10, 15, 20, 25, 30].map((seconds, i) => ({
      seconds,
      uptake: -Math.expm1(-0.01 * seconds) + (i % 2 === 0 ? 1 : -1) * 0.01,
    }));
    expect(codes(early)).toEqual(["warning fit-rate-unsure", "warning fit-plateau-extrapolated"]);
  });
});

test("any finite readings give a fit or a fault, never an exception or a constant that is not finite", () => {
  const reading = fc.record({
    seconds: fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 1e5, noNaN: true })),
    uptake: fc.integer({ min: -1000, max: 100_000 }).map((value) => value / 100),
  });
  fc.assert(
    fc.property(fc.array(reading, { maxLength: 9 }), (list) => {
      const fit = fitUptake(list);
      if (!fit.ok) {
        expect(fit.faults.some(({ severity }) => severity === "error")).toBe(true);
        return;
      }
      for (const value of Object.values(fit.value.parameters!)) {
        expect(value).toBeGreaterThan(0);
        expect(value).toBeLessThan(Number.POSITIVE_INFINITY);
      }
      expect(Number.isFinite(fit.value.standardErrors!.plateau)).toBe(true);
      expect(Number.isFinite(fit.value.standardErrors!.rate ?? 0)).toBe(true);
    }),
    { numRuns: 1000 },
  );
});
