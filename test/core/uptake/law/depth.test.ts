import fc from "fast-check";
import { expect, test } from "vitest";
import {
  depthAt,
  equivalentSeconds,
  secondsForDepth,
  type UptakeModel,
} from "../../../../src/core/uptake/law/depth.js";
import { lawNames } from "../../../../src/core/uptake/law/laws.js";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const models: fc.Arbitrary<UptakeModel> = fc
  .record({
    law: fc.constantFrom(...lawNames),
    ratePerSecond: number(1e-4, 0.05),
    referenceSeconds: number(20, 600),
    referenceCelsius: number(50, 95),
    activationEnergyJPerMol: number(45e3, 117e3),
    saturation: fc.option(number(0.05, 20), { nil: undefined }),
  })
  .map(({ saturation, ...rest }) => (saturation === undefined ? rest : { ...rest, saturation }));
const dips = fc.record({ seconds: number(0, 900), strength: number(0.05, 1.5), celsius: number(45, 98) });

const plain: UptakeModel = {
  law: "first-order",
  ratePerSecond: 0.012,
  referenceSeconds: 180,
  referenceCelsius: 80,
  activationEnergyJPerMol: 75e3,
};

test("the reference time in a fresh bath at the reference temperature gives depth 1", () => {
  fc.assert(
    fc.property(models, (model) => {
      const dip = { seconds: model.referenceSeconds, strength: 1, celsius: model.referenceCelsius };
      expect(depthAt(model, dip)).toBeCloseTo(1, 12);
    }),
  );
});

test("a longer dip is never lighter, nor one in a stronger or warmer bath", () => {
  fc.assert(
    fc.property(
      models,
      dips,
      number(0, 300),
      number(0, 0.5),
      number(0, 10),
      (model, dip, more, dye, heat) => {
        const depth = depthAt(model, dip);
        const slack = 1 - 1e-14;
        expect(depthAt(model, { ...dip, seconds: dip.seconds + more })).toBeGreaterThanOrEqual(depth * slack);
        expect(depthAt(model, { ...dip, strength: dip.strength + dye })).toBeGreaterThanOrEqual(
          depth * slack,
        );
        expect(depthAt(model, { ...dip, celsius: dip.celsius + heat })).toBeGreaterThanOrEqual(depth * slack);
      },
    ),
  );
});

test("a stronger bath never needs longer for the same depth, and reaches whatever a weaker one reaches", () => {
  fc.assert(
    fc.property(models, dips, number(0, 0.5), number(0.01, 1.5), (model, dip, dye, depth) => {
      const weak = secondsForDepth(model, { depth, strength: dip.strength, celsius: dip.celsius });
      const strong = secondsForDepth(model, { depth, strength: dip.strength + dye, celsius: dip.celsius });
      if (weak === undefined) return;
      expect(strong).toBeLessThanOrEqual(weak * (1 + 1e-12));
    }),
  );
});

test("the time for the depth of a dip is the time of the dip", () => {
  fc.assert(
    fc.property(models, dips, (model, dip) => {
      const depth = depthAt(model, dip);
      const plateau = depthAt(model, { ...dip, seconds: 1e30 });
      fc.pre(depth < 0.999 * plateau);
      const back = secondsForDepth(model, { depth, strength: dip.strength, celsius: dip.celsius });
      expect(back).toBeDefined();
      expect(Math.abs(back! - dip.seconds)).toBeLessThanOrEqual(1e-11 * (dip.seconds + 1));
    }),
  );
});

test("the depth of the time for a depth is that depth, and it is undefined only above the plateau", () => {
  fc.assert(
    fc.property(models, dips, number(0.001, 3), (model, { strength, celsius }, depth) => {
      const seconds = secondsForDepth(model, { depth, strength, celsius });
      if (seconds === undefined)
        expect(depthAt(model, { seconds: 1e30, strength, celsius })).toBeLessThanOrEqual(depth * (1 + 1e-12));
      else expect(depthAt(model, { seconds, strength, celsius }) / depth).toBeCloseTo(1, 11);
    }),
  );
});

test("depth 0 takes no time in any bath, and a bath without dye reaches nothing else", () => {
  expect(secondsForDepth(plain, { depth: 0, strength: 0, celsius: 80 })).toBe(0);
  expect(secondsForDepth(plain, { depth: 0.01, strength: 0, celsius: 80 })).toBeUndefined();
  const endless: UptakeModel = { ...plain, law: "parabolic" };
  expect(secondsForDepth(endless, { depth: 0.01, strength: 0, celsius: 80 })).toBeUndefined();
  expect(depthAt(plain, { seconds: 0, strength: 1, celsius: 80 })).toBe(0);
  expect(depthAt({ ...plain, saturation: 0 }, { seconds: 60, strength: 0, celsius: 80 })).toBe(0);
});

test("a depth that only an overstrength bath reaches has no equivalent time in a fresh one", () => {
  const depth = depthAt(plain, { seconds: 180, strength: 1.4, celsius: 80 });
  expect(depth).toBeCloseTo(1.4, 12);
  expect(equivalentSeconds(plain, depth)).toBeUndefined();
  expect(equivalentSeconds(plain, 1)).toBeCloseTo(180, 9);
  expect(equivalentSeconds({ ...plain, referenceCelsius: 65 }, 1)).toBeCloseTo(180, 9);
});

test("a weakened bath needs the equivalent time of the depth divided by its strength", () => {
  const seconds = secondsForDepth(plain, { depth: 0.5, strength: 0.8, celsius: 80 });
  expect(seconds).toBeCloseTo(equivalentSeconds(plain, 0.5 / 0.8)!, 9);
});
