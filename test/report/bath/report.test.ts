import { expect, test } from "vitest";
import type { Batch } from "../../../src/core/model/batch.js";
import { batchWear } from "../../../src/core/plan/wear.js";
import { bathReport } from "../../../src/report/bath/report.js";
import type { Report } from "../../../src/report/report.js";
import { batch, bath, dye } from "../../core/plan/sample.js";

const reportOf = (input: Batch): Report => {
  const wear = batchWear(input);
  if (!wear.ok) throw new Error(JSON.stringify(wear.faults));
  return bathReport(wear.value);
};

/** The sample with an assumed uptake. */
function withUptake(uptakePerDm2: number): Batch {
  const assumed = { ...dye, uptakePerDm2, uptakeAssumed: true };
  return {
    ...batch,
    dyes: [assumed],
    baths: [{ ...bath, dye: assumed }],
    orders: batch.orders.map((one) => ({ ...one, shade: { ...one.shade!, dye: assumed } })),
  };
}
const withDragOut = (dragOutMlPerDm2: number): Batch => ({
  ...batch,
  handling: { ...batch.handling, dragOutMlPerDm2, dragOutAssumed: true },
});

for (const [name, vary, values] of [
  ["uptake", withUptake, [0.03, 0.1]],
  ["drag-out", withDragOut, [0.8, 1.6]],
] as const)
  test(`every block that moves with an assumed ${name} bears the mark, or is under a heading that does`, () => {
    const [a, b] = values.map((value) => reportOf(vary(value)).blocks);
    expect(a!.map(({ kind }) => kind)).toEqual(b!.map(({ kind }) => kind));
    let heading = "";
    let changed = 0;
    for (const [i, block] of a!.entries()) {
      if (block.kind === "heading") heading = block.text;
      if (JSON.stringify(block) === JSON.stringify(b![i]) || heading === "Assumed, not measured") continue;
      changed++;
      expect(`${heading} ${JSON.stringify(block)}`).toContain("†");
    }
    expect(changed).toBeGreaterThan(3);
  });

test("nothing is marked where uptake and drag-out are given", () => {
  expect(JSON.stringify(reportOf(batch).blocks)).not.toContain("†");
});

test("the drawing is the one among the blocks, with strength as a line and a dot a traced load", () => {
  const { picture, blocks, data } = reportOf(batch);
  const [plot] = picture!;
  expect(blocks.flatMap((block) => (block.kind === "plot" ? [block.plot] : []))).toEqual([plot]);
  const { trace } = (data.baths as [{ trace: { load: number; strength: number }[] }])[0];
  const [strength, dips] = plot!.series;
  expect([strength!.kind, dips!.kind]).toEqual(["line", "dots"]);
  expect(strength!.points).toEqual(trace.map(({ load, strength: of }) => [load, 100 * of]));
  expect(dips!.points.map(([load]) => load)).toEqual(trace.map(({ load }) => load));
});

test("a bath that lasts for no load has no drawing", () => {
  const short = { ...batch, handling: { ...batch.handling, longestSeconds: 20 } };
  expect(reportOf(short).picture).toBeUndefined();
});
