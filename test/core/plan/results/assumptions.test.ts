import { expect, test } from "vitest";
import { assumptionsOf } from "../../../../src/core/plan/results/assumptions.js";
import { batch, bath, dye } from "../sample.js";

test("an estimate is partly assumed where over a tenth of the assumed figure's variance is left", () => {
  const message = (assumedShare: number): string => {
    const estimated = { ...dye, uptakeFound: { assumedShare, interval95: [0.02, 0.05] as const } };
    return assumptionsOf(
      { ...batch, baths: [{ ...bath, dye: estimated }] },
      { models: new Map(), aims: [], runs: [], shares: [] },
    )[0]!.message;
  };
  expect(message(0.101)).toContain("partly assumed");
  expect(message(0.099)).not.toContain("partly assumed");
});
