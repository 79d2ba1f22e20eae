import { expect, test } from "vitest";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { timeFactorText } from "../../../../src/core/uptake/law/time-factor-text.js";
import { readFile, readText } from "../../../batch-file/read.js";

const plan = async (trial = "") => {
  const { batch, diagnostics } = await readText(
    `
batch: factor
include: [workshop.yaml, dyes.yaml]
baths:
  - { tank: six, dye: brick, topUp: strength${trial} }
orders:
  - { part: clip, shade: brick-light, base: white, quantity: 40 }
`,
    {
      readFile: (name) =>
        name === "dyes.yaml"
          ? readFile("examples/dyes.yaml").replace(/^ {2}brick:$/m, `  brick:${factor}`)
          : readFile(`examples/${name}`),
    },
  );
  if (batch === undefined) throw new Error(JSON.stringify(diagnostics));
  const planned = planBatch(batch);
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return planned.value;
};
let factor = "";

test("timeFactor multiplies all times of its dye, beside a trial too, and is said", async () => {
  const seconds = async (trial = "") => (await plan(trial)).baths[0]!.loads.map((load) => load.dipSeconds);
  const trial = ", trial: { time: 45 s, lab: [52.0, 37.0, 12.0] }";
  factor = "";
  const [plain, tried] = [await seconds(), await seconds(trial)];
  factor = "\n    timeFactor: 1.08";
  const [longer, longerTried] = [await seconds(), await seconds(trial)];
  longer.forEach((one, i) => {
    // In a longer dip the bath has longer to warm up again.
    expect(one / plain[i]!).toBeGreaterThan(1.07);
    expect(one / plain[i]!).toBeLessThan(1.09);
  });
  // A trial says what the bath does now, whatever was foreseen.
  for (const [i, one] of longerTried.entries()) expect(one).toBeCloseTo(tried[i]!, 6);
  expect((await plan()).baths[0]!.timeFactor).toBe(1.08);
  expect(timeFactorText("coral", 1.08)).toBe("times of coral x 1.08, from the log");
});
