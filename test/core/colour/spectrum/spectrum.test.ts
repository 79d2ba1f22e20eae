import fc from "fast-check";
import { expect, test } from "vitest";
import { illuminantPower, matchingFunctions } from "../../../../src/core/colour/spectrum/cie-tables.js";
import { curveGrid, tableGrid, wavelengthsOf } from "../../../../src/core/colour/spectrum/grid.js";
import { curveLab, spectrumLab, spectrumXyz } from "../../../../src/core/colour/spectrum/spectrum.js";
import { toTableGrid } from "../../../../src/core/colour/spectrum/spline.js";

const readings = (["A", "D50", "D65", "F2", "F11", "LED-B3"] as const).flatMap((illuminant) =>
  ([2, 10] as const).map((observer) => ({ illuminant, observer })),
);
const values = (count: number) =>
  fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: count, maxLength: count });

test("toTableGrid keeps every sample, holds the ends and reproduces a cubic exactly", () => {
  const cubic = (nm: number): number => ((nm - 550) / 100) ** 3 - ((nm - 500) / 90) ** 2;
  const samples = Array.from({ length: 31 }, (_, i) => cubic(400 + 10 * i));
  const out = toTableGrid(samples, 400, 10);
  wavelengthsOf(tableGrid).forEach((nm, i) => {
    expect(out[i]).toBeCloseTo(cubic(Math.min(700, Math.max(400, nm))), 12);
  });
});

test("toTableGrid takes curves wider than the tables and leaves 5 nm data as they are", () => {
  const wide = toTableGrid(
    Array.from({ length: 48 }, (_, i) => (360 + 10 * i) / 1000),
    360,
    10,
  );
  wavelengthsOf(tableGrid).forEach((nm, i) => {
    expect(wide[i]).toBeCloseTo(nm / 1000, 12);
  });
  const fine = Array.from({ length: 61 }, (_, i) => (i % 7) / 7);
  expect(Array.from(toTableGrid(fine, 400, 5)).slice(4, 65)).toEqual(fine);
});

test("spectrumXyz of 5 nm data is the plain sum over the tables", () => {
  fc.assert(
    fc.property(values(81), (reflectance) => {
      const { x, y } = matchingFunctions[10];
      const power = illuminantPower.F11;
      const sum = (bar: readonly number[], r: (i: number) => number): number =>
        power.reduce((total, s, i) => total + s * bar[i]! * r(i), 0);
      const X = (100 * sum(x, (i) => reflectance[i]!)) / sum(y, () => 1);
      expect(
        spectrumXyz({ firstNm: 380, stepNm: 5, reflectance }, { illuminant: "F11", observer: 10 })[0],
      ).toBeCloseTo(X, 9);
    }),
  );
});

test("curveLab of 36 samples returns what spectrumLab returns for them, under every reading", () => {
  fc.assert(
    fc.property(values(curveGrid.count), fc.constantFrom(...readings), (reflectance, reading) => {
      const direct = spectrumLab({ firstNm: 380, stepNm: 10, reflectance }, reading);
      curveLab(reflectance, reading).forEach((value, k) => {
        expect(value).toBeCloseTo(direct[k]!, 8);
      });
    }),
  );
});

test("spectrumLab of the perfect diffuser is 100, 0, 0 under every reading, and of a grey has no chroma", () => {
  for (const reading of readings) {
    for (const [r, L] of [
      [1, 100],
      [0.2, 116 * Math.cbrt(0.2) - 16],
    ] as const) {
      const lab = spectrumLab({ firstNm: 400, stepNm: 10, reflectance: Array(31).fill(r) }, reading);
      [L, 0, 0].forEach((value, k) => {
        expect(lab[k]).toBeCloseTo(value, 10);
      });
    }
  }
});
