import { expect, test } from "vitest";
import type { Dye } from "../../../../src/core/model/batch.js";
import { describeShade } from "../../../../src/core/uptake/shade/describe-shade.js";
import { dye, handling } from "../../plan/sample.js";

const grey = (lightness: number) => ({ kind: "lab" as const, lab: [lightness, 0, 0] as const });
/** A grey dye on white, so that a trial that is coloured is as far from its curve as it has chroma. */
const read: Dye = {
  ...dye,
  base: { name: "white", lab: [92, 0, 0] },
  swatches: [
    { seconds: 15, colour: grey(75) },
    { seconds: 60, colour: grey(55) },
    { seconds: 180, colour: grey(40) },
  ],
};

/** The warnings after a trial with a reddish grey, and how far that is from the curve. */
function tried(a: number) {
  const trial = { seconds: 60, colour: { kind: "lab" as const, lab: [55, a, 0] as const } };
  const found = describeShade(read, handling, { strength: 1, celsius: dye.celsius, trial });
  if (!found.ok || found.value === null) throw new Error("no shade");
  return { codes: found.faults.map(({ code }) => code), deltaE00: found.value.trial!.deltaE00 };
}

test("a trial over 3 CIEDE2000 from the dye's curve is doubtful", () => {
  const [near, far] = [tried(2.1), tried(2.17)];
  expect(near.deltaE00).toBeGreaterThan(2.9);
  expect(near.deltaE00).toBeLessThan(3);
  expect(near.codes).not.toContain("trial-off-curve");
  expect(far.deltaE00).toBeGreaterThan(3);
  expect(far.deltaE00).toBeLessThan(3.1);
  expect(far.codes).toContain("trial-off-curve");
});
