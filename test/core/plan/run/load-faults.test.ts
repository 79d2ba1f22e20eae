import { expect, test } from "vitest";
import { loadFaults } from "../../../../src/core/plan/run/load-faults.js";
import { workBatch } from "../../../../src/core/plan/run/work-batch.js";
import { batch, bath } from "../sample.js";

/** The warnings on a load that leaves a bath at some strength. */
function codes(strengthAfter: number, start = bath.start): string[] {
  const worked = workBatch(batch, "own");
  if (!worked.ok) throw new Error("the sample cannot be worked");
  const { setting, start: before, loads } = worked.value.runs[0]!;
  const { plan, result } = loads[0]!;
  const faults = loadFaults({ ...bath, start }, setting);
  faults.worked({ plan, result: { ...result, strengthAfter } }, before, 1);
  return faults.all().map(({ code }) => code);
}

test("a bath is too strong over 110 %, and a kept one over the strength that it came with", () => {
  expect(codes(1.099)).not.toContain("bath-too-strong");
  expect(codes(1.101)).toContain("bath-too-strong");
  const kept = { kind: "kept", strength: 1.3, areaDm2: 0, ageDays: 0, volumeL: 6 } as const;
  expect(codes(1.299, kept)).not.toContain("bath-too-strong");
  expect(codes(1.301, kept)).toContain("bath-too-strong");
});
