import { expect, test } from "vitest";
import { ciede2000 } from "../../../src/core/colour/difference/ciede2000.js";
import type { Lab } from "../../../src/core/model/batch.js";
import { judgePart } from "../../../src/core/quality/judge-part.js";
import { dipSeconds } from "../../../src/core/uptake/law/dip-time.js";
import { type DyeModel, dyeModel } from "../../../src/core/uptake/shade/dye-model.js";
import { labAfter } from "../../../src/core/uptake/swatches/shade-curve.js";
import { dye, handling } from "../plan/sample.js";

const swatches = (
  [
    [15, 80.2, 21.7, 9.8],
    [30, 73.5, 33.0, 15.9],
    [60, 65.9, 44.6, 23.0],
    [180, 55.2, 55.9, 31.8],
  ] as const
).map(([seconds, ...lab]) => ({ seconds, colour: { kind: "lab" as const, lab } }));

function modelWith(count: number): DyeModel {
  const { ratePerSecond: _rate, ...unrated } = dye;
  const base = { name: "white", lab: [92.1, -0.6, -2.3] } as const;
  const model = dyeModel({ ...unrated, law: "auto", base, swatches: swatches.slice(0, count) }, handling);
  if (!model.ok) throw new Error(model.faults[0]!.message);
  return model.value;
}
const model = modelWith(4);
const { curve } = model.chosen!;
const fresh = { strength: 1, celsius: dye.celsius };
const lab = (seconds: number): Lab => labAfter(curve, seconds);
const judge = (part: Lab, shade: Lab, bath = fresh) => judgePart(model, part, shade, bath)!;

test("a part that was dipped too short is too light, and a second dip for the rest of the time makes it right", () => {
  const found = judge(lab(20), lab(45));
  expect(found.depth).toBe("too light");
  expect(found.partSeconds).toBeCloseTo(20, 2);
  expect(found.shadeSeconds).toBeCloseTo(45, 2);
  expect(found.besideCurve).toBeLessThan(1e-3);
  expect(found.secondDip!.seconds).toBeCloseTo(25, 2);
  expect(found.secondDip!.deltaE00).toBeLessThan(1e-3);
});

test("a second dip in a weaker and cooler bath takes as much longer as that bath does", () => {
  const bath = { strength: 0.7, celsius: dye.celsius - 4 };
  const seconds = dipSeconds(model.uptake, 45, bath) - dipSeconds(model.uptake, 20, bath);
  expect(judge(lab(20), lab(45), bath).secondDip!.seconds).toBeCloseTo(seconds, 2);
  expect(seconds).toBeGreaterThan(30);
});

test("a part that was dipped too long is too dark, and no dip helps", () => {
  expect(judge(lab(60), lab(45))).toMatchObject({ depth: "too dark", secondDip: null });
  expect(judge(lab(60), lab(45)).apartSeconds).toBeCloseTo(15, 2);
});

test("times that no hand tells apart are the right depth", () => {
  expect(judge(lab(50 * 0.985), lab(50)).depth).toBe("right");
  expect(judge(lab(50 * 0.97), lab(50)).depth).toBe("too light");
  expect(judge(lab(50 * 1.03), lab(50)).depth).toBe("too dark");
});

test("what lies beside the curve stays after a second dip", () => {
  const [L, a, b] = lab(20);
  const off: Lab = [L, a - 2, b + 4];
  const found = judge(off, lab(45));
  expect(found.besideCurve).toBeGreaterThan(2);
  expect(found.secondDip!.deltaE00).toBeGreaterThan(1);
  expect(found.secondDip!.deltaE00).toBeLessThan(ciede2000(off, lab(45)));
});

test("a dye with one swatch has no curve to judge along", () => {
  expect(judgePart(modelWith(1), lab(20), lab(45), fresh)).toBeNull();
});
