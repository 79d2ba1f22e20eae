import { expect, test } from "vitest";
import { TankHeats } from "../../../../src/core/bath/heat/tank-heats.js";
import { workBatch } from "../../../../src/core/plan/run/work-batch.js";
import { waitFaults } from "../../../../src/core/plan/warnings/wait-faults.js";
import { dyeModel } from "../../../../src/core/uptake/shade/dye-model.js";
import { batch, dye, handling } from "../sample.js";

test("waits are worth a warning from five minutes in all on", () => {
  const worked = workBatch(batch, "own");
  const model = dyeModel(dye, handling);
  if (!worked.ok || !model.ok) throw new Error("the sample cannot be worked");
  const run = worked.value.runs[0]!;
  const codes = (waitSeconds: number): string[] => {
    const loads = run.loads.map(({ plan, result }, i) => ({
      plan,
      result: { ...result, waitSeconds: i === 0 ? waitSeconds : 0 },
    }));
    return waitFaults(batch, { ...run, loads }, model.value, new TankHeats()).map(({ code }) => code);
  };
  expect(codes(299)).not.toContain("heater-slow");
  expect(codes(301)).toContain("heater-slow");
});

/** The waits of the sample with this heater and top-ups this warm, and what would help; no dryer takes up waits. */
function waiting(heaterW: number, topUpCelsius: number): { seconds: number; help: string } {
  const input = {
    ...batch,
    dryers: [],
    baths: batch.baths.map((bath) => ({ ...bath, tank: { ...bath.tank, heaterW } })),
    handling: { ...handling, topUpCelsius },
  };
  const worked = workBatch(input, "own");
  const model = dyeModel(dye, handling);
  if (!worked.ok || !model.ok) throw new Error("the sample cannot be worked");
  const [run] = worked.value.runs;
  const seconds = run!.loads.reduce((sum, { result }) => sum + result.waitSeconds, 0);
  const [fault] = waitFaults(input, run!, model.value, new TankHeats());
  return { seconds, help: fault?.code === "heater-slow" ? (fault.help ?? "") : "" };
}

test("a remedy is named where it saves a fifth of the waits, and not where it saves less", () => {
  const warm = waiting(300, 60).seconds;
  const saved = (topUpCelsius: number): number => 1 - warm / waiting(300, topUpCelsius).seconds;
  // The warmer the top-ups already are, the less there is to save.
  let [more, less] = [10, 30];
  while (less - more > 0.1) {
    const middle = (more + less) / 2;
    if (saved(middle) > 0.2) more = middle;
    else less = middle;
  }
  expect([saved(more), saved(less)]).toEqual([expect.closeTo(0.2, 3), expect.closeTo(0.2, 3)]);
  expect(waiting(300, more).help).toContain("top-up water of 60 °C");
  expect(waiting(300, less).help).not.toContain("top-up water");
});

test.each([
  [200, 300],
  [201, 400],
  [266, 400],
  [267, 500],
])(
  "beside a heater of %i W one of one and a half times the power is tried, rounded up to %i W",
  (heaterW, stronger) => {
    expect(waiting(heaterW, 10).help).toContain(`a heater of ${stronger} W (`);
  },
);
