import fc from "fast-check";
import { expect, test } from "vitest";
import {
  compareColours,
  compareLab,
  differenceFormulas,
  judge,
} from "../../../../src/core/colour/difference/compare-colours.js";
import { defaultReading } from "../../../../src/core/colour/resolve-colour.js";

const d65 = { illuminant: "D65", observer: 10 } as const;
const srgb = { illuminant: "D65", observer: 2 } as const;

test("compareLab returns every formula and the signed parts", () => {
  const comparison = compareLab([50, 2.5, 0], [73, 25, -18]);
  expect(Object.keys(comparison.deltaE)).toEqual(Object.keys(differenceFormulas));
  expect(comparison.deltaE.ciede2000).toBeCloseTo(27.1492, 4);
  expect(comparison.deltaL).toBe(23);
  expect(comparison.deltaC).toBeGreaterThan(0);
  expect(comparison.deltaH).toBeLessThan(0);
  const { deltaL, deltaC, deltaH } = comparison;
  expect(Math.hypot(deltaL, deltaC, deltaH)).toBeCloseTo(comparison.deltaE.cie76, 10);
});

test("compareLab gives finite numbers for colours that are grey but for the last bit", () => {
  const nearly = fc.constantFrom(0, 5e-324, -1e-162, 1e-155, -3e-101, 1e-100, 1e-50, 60, -0.1);
  fc.assert(
    fc.property(fc.array(nearly, { minLength: 4, maxLength: 4 }), ([a1, b1, a2, b2]) => {
      const { deltaE, deltaL, deltaC, deltaH } = compareLab([50, a1!, b1!], [60, a2!, b2!]);
      for (const value of [...Object.values(deltaE), deltaL, deltaC, deltaH])
        expect(Number.isFinite(value)).toBe(true);
    }),
    { numRuns: 2000 },
  );
});

test("judge passes at the tolerance and fails above it, by the formula asked for", () => {
  const comparison = compareLab([50, 0, 0], [52, 0, 0]);
  expect(judge(comparison, "cie94Textile", 1).pass).toBe(true);
  expect(judge(comparison, "cie76", 1).pass).toBe(false);
});

test("compareColours brings both colours to one reading and marks what a screen cannot show", () => {
  const same = compareColours({ kind: "hex", hex: "#d9603b" }, { kind: "hex", hex: "#d9603b" }, d65);
  if (!same.ok) expect.fail("no report");
  expect(same.value.deltaE.ciede2000).toBe(0);
  expect(same.value.standard).toMatchObject({ hex: "#d9603b", inGamut: true });
  expect(same.value.verdict).toBeUndefined();

  const vivid = compareColours(
    { kind: "lab", lab: [53, 60, 40] },
    { kind: "lab", lab: [53, 100, 67] },
    srgb,
    { formula: "cmc21", tolerance: 1 },
  );
  if (!vivid.ok) expect.fail("no report");
  expect(vivid.value.standard.inGamut).toBe(true);
  expect(vivid.value.sample.inGamut).toBe(false);
  expect(vivid.value.verdict).toEqual({ formula: "cmc21", tolerance: 1, pass: false });
});

test("compareColours compares impossible colours by their numbers and warns about their swatch", () => {
  const report = compareColours({ kind: "lab", lab: [50, 150, 0] }, { kind: "lab", lab: [51, 150, 0] }, d65);
  if (!report.ok) expect.fail("no report");
  expect(report.value.deltaE.cie76).toBe(1);
  expect(report.value.standard.inGamut).toBe(false);
  expect(report.faults.map(({ code, severity }) => [code, severity])).toEqual([
    ["colour-outside-limits", "warning"],
    ["colour-outside-limits", "warning"],
  ]);
});

test("defaultReading is that of the screen where every colour is a hex, else D65/10", () => {
  const hex = { kind: "hex", hex: "#d9603b" } as const;
  expect(defaultReading([hex, hex])).toEqual(srgb);
  expect(defaultReading([hex, { kind: "lab", lab: [50, 0, 0] }])).toEqual(d65);
});

test("compareColours refuses values that are not a reflectance", () => {
  const bad = { kind: "reflectance", wavelengthsNm: [400, 410], reflectance: [0.1, 0.2] } as const;
  expect(compareColours(bad, bad, d65).faults.map(({ code }) => code)).toEqual([
    "reflectance-grid",
    "reflectance-grid",
  ]);
});
