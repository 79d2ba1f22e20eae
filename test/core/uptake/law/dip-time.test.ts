import fc from "fast-check";
import { expect, test } from "vitest";
import { depthAt, dipSeconds, equivalentSeconds } from "../../../../src/core/uptake/law/dip-time.js";
import { uptakeAtStrength } from "../../../../src/core/uptake/law/isotherm.js";
import { lawNames } from "../../../../src/core/uptake/law/laws.js";
import { slowing, strengthForSlowing } from "../../../../src/core/uptake/law/slowing.js";
import { freshDepth, freshSeconds, type UptakeModel } from "../../../../src/core/uptake/law/uptake-model.js";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const models: fc.Arbitrary<UptakeModel> = fc
  .record({
    law: fc.constantFrom(...lawNames),
    ratePerSecond: number(1e-4, 0.05),
    referenceSeconds: number(20, 600),
    referenceCelsius: number(50, 95),
    activationEnergyJPerMol: number(45e3, 117e3),
    saturation: fc.option(number(0.05, 20), { nil: undefined }),
    strengthExponent: fc.option(number(0.5, 4), { nil: undefined }),
    timeFactor: fc.option(number(0.5, 2), { nil: undefined }),
  })
  .map((drawn) => {
    const given = Object.entries(drawn).filter(([, value]) => value !== undefined);
    return Object.fromEntries(given) as unknown as UptakeModel;
  });
const strengths = number(0.02, 3);
const baths = fc.record({ strength: strengths, celsius: number(45, 98) });
const freshTimes = number(0.1, 900);

const plain: UptakeModel = {
  law: "first-order",
  ratePerSecond: 0.012,
  referenceSeconds: 180,
  referenceCelsius: 80,
  activationEnergyJPerMol: 75e3,
};

test("the reference time in a fresh bath at the reference temperature gives depth 1", () => {
  fc.assert(
    fc.property(models, ({ timeFactor: _, ...model }) => {
      const dip = { seconds: model.referenceSeconds, strength: 1, celsius: model.referenceCelsius };
      expect(depthAt(model, dip)).toBeCloseTo(1, 9);
    }),
  );
});

test("a stronger or warmer bath never needs a longer dip, and a deeper shade never a shorter one", () => {
  fc.assert(
    fc.property(
      models,
      freshTimes,
      baths,
      number(0, 0.5),
      number(0, 10),
      number(0, 300),
      (model, fresh, bath, dye, heat, more) => {
        const seconds = dipSeconds(model, fresh, bath);
        const slack = seconds * (1 + 1e-9);
        expect(dipSeconds(model, fresh, { ...bath, strength: bath.strength + dye })).toBeLessThanOrEqual(
          slack,
        );
        expect(dipSeconds(model, fresh, { ...bath, celsius: bath.celsius + heat })).toBeLessThanOrEqual(
          slack,
        );
        expect(dipSeconds(model, fresh + more, bath) * (1 + 1e-9)).toBeGreaterThanOrEqual(seconds);
      },
    ),
  );
});

test("the time is continuous in the strength, at 1 as well, where it is the fresh bath's", () => {
  fc.assert(
    fc.property(models, freshTimes, (model, fresh) => {
      const at = (strength: number): number =>
        dipSeconds(model, fresh, { strength, celsius: model.referenceCelsius }) / (model.timeFactor ?? 1);
      expect(at(1) / fresh).toBeCloseTo(1, 9);
      for (const strength of [1 - 1e-7, 1 + 1e-7])
        expect(Math.abs(at(strength) / fresh - 1)).toBeLessThan(1e-5);
    }),
  );
});

test("any depth that a fresh bath reaches has a time at any strength above 0", () => {
  fc.assert(
    fc.property(models, freshTimes, number(1e-3, 5), (model, fresh, strength) => {
      const seconds = dipSeconds(model, fresh, { strength, celsius: 80 });
      expect(Number.isFinite(seconds) && seconds > 0).toBe(true);
    }),
  );
});

test("where the exponent is not measured the time lies between 1/a(s) and 1/a(s)² of the fresh time", () => {
  fc.assert(
    fc.property(models, freshTimes, strengths, ({ strengthExponent: _, ...model }, fresh, strength) => {
      const a = uptakeAtStrength(strength, model.saturation);
      const ratio = slowing(model, fresh, strength);
      const [low, high] = [Math.min(1 / a, a ** -2), Math.max(1 / a, a ** -2)];
      expect(ratio).toBeGreaterThanOrEqual(low * (1 - 1e-12));
      expect(ratio).toBeLessThanOrEqual(high * (1 + 1e-12));
    }),
  );
});

test("between those limits it is the law's own ratio: of depths that the weaker bath reaches early, by hand", () => {
  // Second order, x = 0.5: g = 1/3; at s = 0.8 u = 0.41667, x = 0.7142857: 1.428571 times as long, between 1.25 and 1.5625.
  expect(slowing({ law: "second-order", ratePerSecond: 0.01 }, 50, 0.8)).toBeCloseTo(1.4285714286, 9);
  // First order, x = 0.2: g = 0.18127; at s = 0.8 u = 0.22659, x = 0.256945.
  expect(slowing({ law: "first-order", ratePerSecond: 0.01 }, 20, 0.8)).toBeCloseTo(1.2847, 4);
});

test("the fresh time of the time for a fresh time is that time", () => {
  fc.assert(
    fc.property(models, freshTimes, baths, (model, fresh, bath) => {
      // Where a law is all but level its own inverse loses digits.
      fc.pre(model.ratePerSecond * fresh < 12);
      const seconds = dipSeconds(model, fresh, bath);
      expect(equivalentSeconds(model, { seconds, ...bath }) / fresh).toBeCloseTo(1, 6);
    }),
  );
});

test("the strength for a slowing slows so much", () => {
  fc.assert(
    fc.property(models, freshTimes, number(0.3, 1.9), (model, fresh, strength) => {
      fc.pre(model.ratePerSecond * fresh < 12);
      const ratio = slowing(model, fresh, strength);
      const back = strengthForSlowing(model, fresh, ratio);
      fc.pre(back !== undefined);
      expect(slowing(model, fresh, back!) / ratio).toBeCloseTo(1, 6);
    }),
  );
});

test("a dip of no time has no depth, and a depth that no fresh time gives has none", () => {
  expect(dipSeconds(plain, 0, { strength: 0.5, celsius: 80 })).toBe(0);
  expect(depthAt(plain, { seconds: 0, strength: 1, celsius: 80 })).toBe(0);
  expect(freshSeconds(plain, 1.4)).toBeUndefined();
  expect(freshSeconds(plain, freshDepth(plain, 45))).toBeCloseTo(45, 9);
});
