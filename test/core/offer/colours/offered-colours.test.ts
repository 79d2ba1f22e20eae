import { expect, test } from "vitest";
import { ciede2000 } from "../../../../src/core/colour/difference/ciede2000.js";
import type { Base, Handling } from "../../../../src/core/model/batch.js";
import { type DyeColours, offeredColours } from "../../../../src/core/offer/colours/offered-colours.js";
import { equivalentSeconds } from "../../../../src/core/uptake/law/dip-time.js";
import { dyeModel, hasCurve } from "../../../../src/core/uptake/shade/dye-model.js";
import { shadeTime } from "../../../../src/core/uptake/shade/shade-time.js";
import { labAfter } from "../../../../src/core/uptake/swatches/shade-curve.js";
import { handling } from "../../plan/sample.js";
import { coral, grey } from "../sample.js";

const model = dyeModel(coral, handling);
if (!model.ok || !hasCurve(model.value)) throw new Error("the dye has no curve");
const curved = model.value;

function found(base?: Base, changed: Partial<Handling> = {}, tolerance = 1.5): DyeColours {
  const colours = offeredColours(curved, { ...handling, ...changed }, tolerance, base);
  if (!colours.ok) throw new Error(colours.faults[0]!.message);
  return colours.value;
}

test("colours on every base are two tolerances from the bare part and from each other, and hold", () => {
  for (const base of [undefined, grey])
    for (const tolerance of [1.5, 3]) {
      const { colours } = found(base, {}, tolerance);
      const labs = colours.map(({ lab }) => lab);
      expect(labs.length).toBeGreaterThan(1);
      for (const [i, one] of labs.entries())
        for (const other of [(base ?? coral.base!).lab!, ...labs.slice(0, i)])
          expect(ciede2000(one, other)).toBeGreaterThanOrEqual(2 * tolerance);
      for (const one of colours) {
        expect(one.deltaE00ForCelsius).toBeLessThanOrEqual(tolerance);
        expect(one.deltaE00ForStrength).toBeLessThanOrEqual(tolerance);
        const [from, to] = one.windowSeconds;
        expect(to ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(from + 2 * handling.timingSeconds);
        expect(one.estimated).toBe(base === grey);
      }
    }
});

test("a colour's dip and window are those that shade gives for it", () => {
  for (const { seconds, lab, windowSeconds } of found().colours) {
    const bath = { strength: 1, celsius: coral.celsius };
    const target = { kind: "colour", colour: { kind: "lab", lab } } as const;
    const timed = shadeTime(
      curved,
      handling,
      bath,
      { name: "x", target, tolerance: 1.5 },
      () => "",
      undefined,
    );
    if (!timed.ok) throw new Error(timed.faults[0]!.message);
    expect(timed.value.seconds).toBeCloseTo(seconds, 2);
    expect(timed.value.windowSeconds![0]).toBeCloseTo(windowSeconds[0], 2);
    expect(timed.value.windowSeconds![1]!).toBeCloseTo(windowSeconds[1]!, 2);
  }
});

test("what a colour must hold through is 2 °C and a tenth of the strength, either way", () => {
  for (const one of found().colours) {
    const moved = (celsius: number, strength: number): number =>
      ciede2000(
        one.lab,
        labAfter(
          curved.chosen.curve,
          equivalentSeconds(curved.uptake, { seconds: one.seconds, celsius, strength }),
        ),
      );
    expect(one.deltaE00ForCelsius).toBeCloseTo(Math.max(moved(78, 1), moved(82, 1)), 12);
    expect(one.deltaE00ForStrength).toBeCloseTo(Math.max(moved(80, 0.9), moved(80, 1.1)), 12);
  }
});

test("dips are left out from where they become too short, and not a second later", () => {
  for (const shortestSeconds of [20, 26]) {
    const { leftOut, colours } = found(undefined, { shortestSeconds }, 4);
    expect(leftOut[0]).toMatchObject({
      dye: "coral",
      base: "white",
      toSeconds: shortestSeconds - 1,
      reason: "too-short",
      worst: shortestSeconds,
    });
    expect(colours[0]!.seconds).toBe(shortestSeconds);
  }
});

test("a dip whose window is narrower than twice the timing is left out, and one as wide is not", () => {
  const [first] = found(undefined, {}, 3).colours;
  const [from, to] = first!.windowSeconds;
  const timingSeconds = (to! - from) / 2;
  const reasonOf = (timing: number): string | undefined =>
    found(undefined, { timingSeconds: timing }, 3).leftOut.find(
      ({ fromSeconds, toSeconds }) => fromSeconds <= first!.seconds && first!.seconds <= toSeconds,
    )?.reason;
  expect(reasonOf(timingSeconds * 0.999)).toBeUndefined();
  expect(reasonOf(timingSeconds * 1.001)).toBe("too-narrow");
});

test("a colour that 2 °C or a tenth of the strength moves out of its tolerance is left out with the reason", () => {
  const loose = found(undefined, { timingSeconds: 0 }, 3).colours;
  const tight = found(undefined, { timingSeconds: 0, shortestSeconds: 1 }, 1);
  const reasons = new Set(tight.leftOut.map(({ reason }) => reason));
  expect([...reasons]).toContain("temperature");
  for (const { seconds, deltaE00ForCelsius } of loose)
    expect(
      tight.leftOut.some(
        ({ reason, fromSeconds, toSeconds }) =>
          reason === "temperature" && fromSeconds <= seconds && seconds <= toSeconds,
      ),
    ).toBe(deltaE00ForCelsius > 1);
});
