import fc from "fast-check";
import { expect, test } from "vitest";
import { type Topping, type ToppingAsked, topping } from "../../../../src/core/bath/make-up/top-up.js";
import { coldPerHot } from "../../../../src/core/bath/water.js";

const liquid = { kind: "liquid", fraction: 0.1 } as const;
const cold = { celsius: 20, roomCelsius: 20 };
type Four = readonly [volumeL: number, strength: number, toVolumeL: number, toStrength: number];
const ask = (
  [volumeL, strength, toVolumeL, toStrength]: Four,
  dilution: ToppingAsked["dilution"] = liquid,
): Topping | undefined => topping({ volumeL, strength, toVolumeL, toStrength, ...cold, dilution });
const rounded = (done: Topping | undefined): unknown =>
  done &&
  Object.fromEntries(Object.entries(done).map(([k, v]) => [k, typeof v === "number" ? +v.toFixed(9) : v]));

test("a low, weak bath gets the missing dye and water for the rest", () => {
  expect(rounded(ask([5, 0.8, 6, 1]))).toEqual({
    takeOutHotL: 0,
    concentrateMl: 200,
    waterMl: 800,
    strength: 1,
    tooStrong: false,
  });
});

test("a bath too full for its dye says how much to take out first, and then takes no water", () => {
  const takeOut = 0.3 / 0.95;
  expect(rounded(ask([6, 0.5, 6, 1]))).toEqual({
    takeOutHotL: +takeOut.toFixed(9),
    concentrateMl: +(1000 * takeOut).toFixed(9),
    waterMl: 0,
    strength: 1,
    tooStrong: false,
  });
});

test("a bath too strong with room gets water only and says what strength results", () => {
  expect(rounded(ask([5, 1.5, 6, 1]))).toEqual({
    takeOutHotL: 0,
    concentrateMl: 0,
    waterMl: 1000,
    strength: 1.25,
    tooStrong: true,
  });
});

test("a full bath that is too strong is taken down until water alone gives the strength", () => {
  expect(rounded(ask([6, 1.5, 6, 1]))).toEqual({
    takeOutHotL: 2,
    concentrateMl: 0,
    waterMl: 2000,
    strength: 1,
    tooStrong: false,
  });
});

test("an overfull bath that is a little weak is taken down under the mark, though it holds more dye than asked for", () => {
  const takeOut = 0.5 + (0.1 * 6 * 0.02) / (1 - 0.1 * 0.98);
  expect(rounded(ask([6.5, 0.98, 6, 1]))).toEqual({
    takeOutHotL: +takeOut.toFixed(9),
    concentrateMl: +(1000 * (takeOut - 0.5)).toFixed(9),
    waterMl: 0,
    strength: 1,
    tooStrong: false,
  });
});

test("a bath as it should be gets nothing, and an undiluted one gets dye only", () => {
  const nothing = { takeOutHotL: 0, strength: 1, tooStrong: false, concentrateMl: 0, waterMl: 0 };
  expect(ask([6, 1, 6, 1])).toEqual(nothing);
  const neat = ask([5, 1, 6, 1], { kind: "liquid", fraction: 1 });
  expect(neat).toEqual({ ...nothing, concentrateMl: 1000 });
});

test("a strength above that of the concentrate is undefined", () => {
  expect(ask([5, 1, 6, 11])).toBeUndefined();
  expect(ask([5, 1, 6, 10])).toBeDefined();
});

test("powder needs no room: a full weak bath gets powder and no water", () => {
  expect(ask([6, 0.5, 6, 1], { kind: "powder", gramsPerL: 20 })).toEqual({
    takeOutHotL: 0,
    powderG: 60,
    waterMl: 0,
    strength: 1,
    tooStrong: false,
  });
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const asked = fc.record({
  volumeL: number(0.1, 12),
  strength: number(0.01, 3),
  toVolumeL: number(0.1, 12),
  toStrength: number(0.01, 3),
  celsius: number(20, 95),
  roomCelsius: fc.constant(20),
  dilution: fc.oneof(
    fc.record({ kind: fc.constant("liquid" as const), fraction: number(0.01, 0.33) }),
    fc.record({ kind: fc.constant("powder" as const), gramsPerL: number(1, 50) }),
  ),
});

test("what is said to be done gives the volume and strength that are said to result", () => {
  fc.assert(
    fc.property(asked, (bath) => {
      const done = topping(bath)!;
      const coldMlPerL = 1000 * coldPerHot(bath.celsius, bath.roomCelsius);
      const { dilution } = bath;
      const dye = "powderG" in done ? done.powderG : done.concentrateMl;
      const freshDyePerL =
        dilution.kind === "liquid"
          ? dilution.fraction * coldMlPerL
          : (dilution.gramsPerL * coldMlPerL) / 1000;
      const pouredL = ((dilution.kind === "liquid" ? dye : 0) + done.waterMl) / coldMlPerL;
      const keptL = bath.volumeL - done.takeOutHotL;
      for (const amount of [dye, done.waterMl, done.takeOutHotL, keptL])
        expect(amount).toBeGreaterThanOrEqual(0);
      expect(keptL + pouredL).toBeCloseTo(bath.toVolumeL, 9);
      const strength = (keptL * bath.strength + dye / freshDyePerL) / bath.toVolumeL;
      expect(strength).toBeCloseTo(done.strength, 9);
      if (done.tooStrong) expect(strength).toBeGreaterThan(bath.toStrength);
      else expect(strength).toBeCloseTo(bath.toStrength, 9);
    }),
    { numRuns: 1000 },
  );
});
