import { expect, test } from "vitest";
import { colourReport, spectrumReport } from "../../../src/core/colour/colour-report.js";
import { resolveLab, spectrumOf } from "../../../src/core/colour/resolve-colour.js";

const d65 = { illuminant: "D65", observer: 10 } as const;
const wavelengthsNm = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
const reflectance = wavelengthsNm.map((nm) => 0.85 - 0.1 * Math.exp(-(((nm - 430) / 40) ** 2)));

test("colourReport of a reflectance is the report of its spectrum", () => {
  const report = colourReport({ kind: "reflectance", wavelengthsNm, reflectance }, d65);
  expect(report).toEqual(spectrumReport({ firstNm: 400, stepNm: 10, reflectance }, d65));
  if (!report.ok) expect.fail("no report");
  expect(report.value.whitenessValid).toBe(true);
  expect(report.value.yellowness).toBeGreaterThan(1);
  expect(report.value.lch[1]).toBeCloseTo(Math.hypot(report.value.lab[1], report.value.lab[2]), 12);
});

test("colourReport of a hex keeps the hex and, under its own reading, its numbers", () => {
  const report = colourReport({ kind: "hex", hex: "#ffffff" }, { illuminant: "D65", observer: 2 });
  if (!report.ok) expect.fail("no report");
  expect(report.value).toMatchObject({ hex: "#ffffff", inGamut: true });
  [100, 0, 0].forEach((value, k) => {
    expect(report.value.lab[k]).toBeCloseTo(value, 9);
  });
  expect(report.value.xyz[2]).toBeCloseTo(108.9058, 4);
  expect(report.value.whiteness).toBeCloseTo(100, 9);
  expect(report.value.tint).toBeCloseTo(0, 9);
});

test("colourReport has no whiteness, tint or yellowness under another illuminant than D65", () => {
  const report = colourReport({ kind: "lab", lab: [90, 0, 2] }, { illuminant: "A", observer: 10 });
  if (!report.ok) expect.fail("no report");
  expect(report.value).toMatchObject({
    whiteness: null,
    tint: null,
    yellowness: null,
    whitenessValid: false,
  });
});

test("colourReport of black holds only numbers that can be printed", () => {
  const report = colourReport({ kind: "lab", lab: [0, 0, 0] }, d65);
  if (!report.ok) expect.fail("no report");
  expect(report.value).toMatchObject({
    hex: "#000000",
    chromaticity: null,
    whiteness: null,
    yellowness: null,
    lch: [0, 0, 0],
  });
});

test.each([
  ["too short", wavelengthsNm.slice(1), reflectance.slice(1), "span 400 to 700"],
  ["uneven", [400, 410, 425, ...wavelengthsNm.slice(3)], reflectance, "rise by 10 nm"],
  [
    "too coarse",
    wavelengthsNm.filter((_, i) => i % 2 === 0),
    reflectance.filter((_, i) => i % 2 === 0),
    "every 5",
  ],
  [
    "over one",
    wavelengthsNm,
    reflectance.map((value, i) => (i === 3 ? 1.2 : value)),
    "430 nm must lie in 0 to 1",
  ],
  ["not as many", wavelengthsNm, reflectance.slice(1), "31 wavelengths but 30 values"],
])("spectrumOf refuses a curve that is %s", (_, nm, values, said) => {
  const spectrum = spectrumOf(nm, values);
  expect(spectrum.ok).toBe(false);
  expect(spectrum.faults[0]!.message).toContain(said);
  expect(resolveLab({ kind: "reflectance", wavelengthsNm: nm, reflectance: values }, d65).ok).toBe(false);
});
