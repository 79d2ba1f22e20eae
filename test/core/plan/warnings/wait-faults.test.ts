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
