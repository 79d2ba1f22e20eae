import { expect, test } from "vitest";
import type { Bath, Dye, Lab, Shade } from "../../../../src/core/model/batch.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { batch, bath, dye, hook, isothermal, order } from "../sample.js";

const { ratePerSecond: _, ...rest } = dye;
const read: readonly (readonly [number, Lab])[] = [
  [15, [80.2, 21.7, 9.8]],
  [30, [73.5, 33.0, 15.9]],
  [60, [65.9, 44.6, 23.0]],
  [180, [55.2, 55.9, 31.8]],
];
const coral: Dye = {
  ...rest,
  law: "parabolic",
  base: { name: "white", lab: [92.1, -0.6, -2.3] },
  swatches: read.map(([seconds, lab]) => ({ seconds, colour: { kind: "lab" as const, lab } })),
};

/** What is advised for two loads of a shade of 45 s in a bath of a strength. */
function advised(strength: number, tolerance: number, more: Partial<Bath> = {}, of: Dye = coral, parts = 40) {
  const shade: Shade = { name: "asked", dye: of, target: { kind: "time", seconds: 45 }, tolerance };
  const start = { kind: "kept" as const, volumeL: 6, strength, ageDays: 0, areaDm2: 0 };
  const plan = planBatch(
    isothermal({
      ...batch,
      baths: [{ ...bath, dye: of, start, topUp: "none", ...more }],
      orders: [order(0, hook, shade, parts)],
    }),
  );
  if (!plan.ok) throw new Error(plan.faults[0]!.message);
  return plan.value.baths[0]!.trialAdvice;
}

test("a weak bath whose window is narrower than what the exponent leaves open is worth a trial of load 1", () => {
  expect(advised(0.7, 1.5)).toMatchObject({ load: 1 });
  expect(advised(0.7, 1.5)!.seconds).toBeCloseTo(45 / 0.7 ** 2, 0);
});

test("a full bath, a wide window, a single load, a trial that was dipped or a known exponent ask for none", () => {
  expect(advised(1, 1.5)).toBeNull();
  expect(advised(0.7, 15)).toBeNull();
  expect(advised(0.7, 1.5, {}, coral, 4)).toBeNull();
  const trial = { seconds: 60, colour: { kind: "lab" as const, lab: read[2]![1] } };
  expect(advised(0.7, 1.5, { trial })).toBeNull();
  expect(advised(0.7, 1.5, {}, { ...coral, strengthExponent: 1.4 })).toBeNull();
});

test("where the law already says 2, the window's near end decides: half as wide a tolerance is worth it, twice is not", () => {
  // 45 s at 85 %: with exponent 1 the dip gives the colour of 53 s in a fresh bath.
  expect(advised(0.85, 1)).not.toBeNull();
  expect(advised(0.85, 4)).toBeNull();
});
