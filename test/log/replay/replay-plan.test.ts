import { expect, test } from "vitest";
import type { Batch } from "../../../src/core/model/batch.js";
import { planBatch } from "../../../src/core/plan/plan.js";
import type { Plan, PlanBath, PlanLoad } from "../../../src/core/plan/plan-model.js";
import { SharedWork } from "../../../src/core/plan/run/shared-work.js";
import { type LoggedStart, startFromLog } from "../../../src/log/replay/start-from-log.js";
import { localTime } from "../../../src/log/row/local-time.js";
import type { LogRow } from "../../../src/log/row/log-row.js";
import { readFile, readText } from "../../batch-file/read.js";

const shared = new SharedWork();

async function batchOf(text: string): Promise<Batch> {
  const { batch, diagnostics } = await readText(text, {
    readFile: (name) => readFile(`examples/${name}`),
  });
  if (batch === undefined) throw new Error(JSON.stringify(diagnostics));
  return batch;
}

const spec = (bath: string, quantity: number, more = "") => `
batch: log
include: [workshop.yaml, dyes.yaml]
${more}
baths:
  - { tank: six, dye: brick, ${bath} }
orders:
  - { part: clip, shade: brick-light, base: white, quantity: ${quantity} }
  - { part: hook, shade: brick-deep, base: white, quantity: 60 }
`;

const at = (minute: number) => {
  const seconds = Math.round(60 * minute);
  return localTime(2026, 10, 5, 8 + Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60)!;
};

type Exact = (value: number) => number;

function rowsOf(plan: Plan, bath: PlanBath, exact: Exact = (value) => value): LogRow[] {
  const amounts = (of: object) => {
    const { concentrateMl, waterMl } = of as { concentrateMl: number; waterMl: number };
    return { concentrateMl: exact(concentrateMl), waterMl: exact(waterMl) };
  };
  const ends = (load: number) =>
    plan.timeline.find((one) => one.what === "dip" && one.bath === bath.bath && one.load === load)!.endMinute;
  const common = { row: 1, bath: bath.tank, dye: bath.dye };
  const loadRows = (load: PlanLoad): LogRow[] => [
    {
      ...common,
      event: "load",
      time: at(ends(load.load)),
      part: load.part,
      parts: load.parts,
      seconds: exact(load.dipSeconds),
      celsius: load.celsiusBefore,
      shade: load.shade,
    },
    ...(load.topUp === null
      ? []
      : [{ ...common, event: "top-up" as const, time: at(ends(load.load)), ...amounts(load.topUp) }]),
  ];
  return [
    { ...common, event: "made-up", time: at(0), ...amounts(bath.makeUp) },
    ...bath.loads.flatMap(loadRows),
  ];
}

async function replayed(text: string, exact?: Exact): Promise<{ plan: Plan; found: LoggedStart }> {
  const batch = await batchOf(text);
  const plan = planBatch(batch, shared);
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  const rows = rowsOf(plan.value, plan.value.baths[0]!, exact);
  const found = startFromLog(batch, batch.baths[0]!, rows, shared);
  if (!found.ok) throw new Error(JSON.stringify(found.faults));
  return { plan: plan.value, found: found.value };
}

const relative = (a: number, b: number): number => Math.abs(a / b - 1);

test.each(["strength", "level", "none"])(
  "a log of what a plan foresees leaves the bath that the plan leaves: topUp %s",
  async (rule) => {
    const { plan, found } = await replayed(spec(`start: fresh, topUp: ${rule}`, 120));
    const { volumeL, strength, areaDm2 } = plan.baths[0]!.carryOver!;
    expect(relative(found.volumeL, volumeL)).toBeLessThan(2e-4);
    expect(relative(found.strength, strength)).toBeLessThan(2e-4);
    expect(relative(found.areaDm2, areaDm2)).toBeLessThan(1e-9);
  },
);

test("with times to the second and amounts as they are poured it is the same to their rounding", async () => {
  const { plan, found } = await replayed(spec("start: fresh, topUp: strength", 120), Math.round);
  const { volumeL, strength } = plan.baths[0]!.carryOver!;
  expect(relative(found.volumeL, volumeL)).toBeLessThan(2e-3);
  expect(relative(found.strength, strength)).toBeLessThan(2e-3);
});
