import { expect, test } from "vitest";
import { done } from "../../../../src/core/fault.js";
import { trialFaults } from "../../../../src/core/plan/warnings/trial-faults.js";
import { bath, dye } from "../sample.js";

/** The codes for a trial whose colour is so far from the dye's curve, and which makes all times so much longer. */
const codes = (deltaE00: number, factor = 1): string[] =>
  trialFaults(
    bath,
    done({
      uptake: {
        law: "first-order",
        ratePerSecond: 0.012,
        referenceSeconds: 300,
        referenceCelsius: dye.celsius,
        activationEnergyJPerMol: 75_000,
      },
      factor,
      trial: { seconds: 60, lab: [65.9, 44.6, 23.0], freshSeconds: 60 },
      deltaE00,
    }),
  ).map(({ code }) => code);

test("a trial over 3 CIEDE2000 from the dye's curve is doubtful", () => {
  expect(codes(2.99)).toEqual([]);
  expect(codes(3.01)).toEqual(["trial-off-curve"]);
});

test("a trial that changes all times by more than 2.5 times, either way, is unlikely", () => {
  expect([2.49, 1 / 2.49].flatMap((factor) => codes(0, factor))).toEqual([]);
  expect([2.51, 1 / 2.51].map((factor) => codes(0, factor))).toEqual([
    ["trial-unlikely"],
    ["trial-unlikely"],
  ]);
});
