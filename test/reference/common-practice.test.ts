import { expect, test } from "vitest";
import { readBatch } from "../../src/batch-file/read-batch.js";
import { starter } from "../../src/cli/new/starter.js";
import { planBatch } from "../../src/core/plan/plan.js";
import { parseDilution } from "../../src/core/quantity/parse/parse-dilution.js";

// Common practice, no source. It is what people do who dip sintered nylon in small tanks, not measurements; the tool must
// take such work as ordinary, without a warning, and its starter must be such work.

async function planned(changes: readonly string[] = []) {
  const read = await readBatch({
    name: "batch.yaml",
    text: starter,
    overrides: changes,
    readFile: async (file) => {
      throw new Error(`${file} is not wanted`);
    },
  });
  const plan = planBatch(read.batch!);
  if (!plan.ok) throw new Error(plan.faults[0]!.message);
  return plan.value;
}

test("1:9 by volume is 10 % of the bath (common practice, no source)", () => {
  expect(parseDilution("1:9")).toMatchObject({ ok: true, value: { kind: "liquid", value: 0.1 } });
});

test("the starter works at 80 °C with 1 part of concentrate in 10 (common practice, no source)", async () => {
  const bath = (await planned()).baths[0]!;
  expect(bath.celsius).toBe(80);
  expect(bath.makeUp).toMatchObject({ fraction: 0.1 });
});

for (const seconds of [30, 45, 60])
  test(`a dip of ${seconds} s in a fresh bath is ordinary: its time comes out, and nothing is warned of (common practice, no source)`, async () => {
    const plan = await planned(["orders.1.quantity=1", `shades.moss-light.time=${seconds} s`]);
    expect(plan.warnings).toEqual([]);
    // The parts come in cold and lower the bath by a kelvin, which is 7 % of the time.
    for (const load of plan.baths[0]!.loads.filter(({ shade }) => shade === "moss-light"))
      expect(load.dipSeconds / seconds - 1.035).toBeLessThan(0.035);
  });

test("parts dry at 70 °C for an hour (common practice, no source)", async () => {
  const plan = await planned();
  expect(plan.dryer).toMatchObject({ celsius: 70, minutes: 60 });
  for (const run of plan.timeline.filter(({ what }) => what === "dry"))
    expect(run.endMinute - run.startMinute).toBeCloseTo(60, 9);
});
