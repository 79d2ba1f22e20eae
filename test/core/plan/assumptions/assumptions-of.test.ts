import { expect, test } from "vitest";
import { assumptionsOf } from "../../../../src/core/plan/assumptions/assumptions-of.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import type { LoadResult } from "../../../../src/core/plan/run/bath-run.js";
import { workBatch } from "../../../../src/core/plan/run/work-batch.js";
import { dyeModel } from "../../../../src/core/uptake/shade/dye-model.js";
import { batch, bath, dye, handling, hook, light, order } from "../sample.js";

test("an estimate is partly assumed where over a tenth of the assumed figure's variance is left", () => {
  const message = (assumedShare: number): string => {
    const estimated = { ...dye, uptakeFound: { assumedShare, interval95: [0.02, 0.05] as const } };
    return assumptionsOf({
      batch: { ...batch, baths: [{ ...bath, dye: estimated }] },
      models: new Map(),
      mixed: new Map(),
      aims: [],
      runs: [],
      shares: [],
    })[0]!.message;
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

/** The assumptions where the one load of a bath had these figures. */
function codesWith(change: Partial<LoadResult>): string[] {
  const worked = workBatch(batch, "own");
  const model = dyeModel(dye, handling);
  if (!worked.ok || !model.ok) throw new Error("the sample cannot be worked");
  const run = worked.value.runs[0]!;
  const [{ plan, result }] = run.loads as [(typeof run.loads)[number]];
  const steady = { ...result, strengthDuring: 1, celsiusBefore: 80, celsiusAfter: 80, ...change };
  return assumptionsOf({
    batch,
    models: new Map([[dye, model.value]]),
    mixed: new Map(),
    aims: [],
    runs: [{ ...run, loads: [{ plan, result: steady }] }],
    shares: [],
  }).map(({ code }) => code);
}

test("the exponent is assumed where a bath leaves full strength by more than 5 %", () => {
  for (const strengthDuring of [0.951, 1.049])
    expect(codesWith({ strengthDuring })).not.toContain("assumed-strength-exponent");
  for (const strengthDuring of [0.949, 1.051])
    expect(codesWith({ strengthDuring })).toContain("assumed-strength-exponent");
});

test("the activation energy is assumed where a bath leaves its temperature by more than 0.5 K on average", () => {
  expect(codesWith({ celsiusAfter: 79.02 })).not.toContain("assumed-activation-energy");
  expect(codesWith({ celsiusAfter: 78.98 })).toContain("assumed-activation-energy");
});
