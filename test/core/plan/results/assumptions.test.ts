import { expect, test } from "vitest";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { assumptionsOf } from "../../../../src/core/plan/results/assumptions.js";
import { batch, bath, dye, hook, light, order } from "../sample.js";

test("an estimate is partly assumed where over a tenth of the assumed figure's variance is left", () => {
  const message = (assumedShare: number): string => {
    const estimated = { ...dye, uptakeFound: { assumedShare, interval95: [0.02, 0.05] as const } };
    return assumptionsOf(
      { ...batch, baths: [{ ...bath, dye: estimated }] },
      { models: new Map(), mixed: new Map(), aims: [], runs: [], shares: [] },
    )[0]!.message;
  };
  expect(message(0.101)).toContain("partly assumed");
  expect(message(0.099)).not.toContain("partly assumed");
});

test("the usual drag-out is assumed only where a part is dyed that has none of its own", () => {
  const codes = (dragOutMlPerDm2?: number) => {
    const part = dragOutMlPerDm2 === undefined ? hook : { ...hook, dragOutMlPerDm2 };
    const plan = planBatch({
      ...batch,
      handling: { ...batch.handling, dragOutAssumed: true },
      orders: [order(0, part, light, 10)],
    });
    return plan.ok ? plan.value.assumptions.map(({ code }) => code) : [];
  };
  expect(codes()).toContain("assumed-drag-out");
  expect(codes(2.4)).not.toContain("assumed-drag-out");
});
