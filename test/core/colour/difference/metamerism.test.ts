import { expect, test } from "vitest";
import { metamerism } from "../../../../src/core/colour/difference/metamerism.js";
import { smoothReflectance } from "../../../../src/core/colour/spectrum/smooth-reflectance.js";
import { curveLab } from "../../../../src/core/colour/spectrum/spectrum.js";

const d65 = { illuminant: "D65", observer: 10 } as const;
const f11 = { illuminant: "F11", observer: 10 } as const;
const step = Array.from({ length: 36 }, (_, i) => 0.1 + 0.6 / (1 + Math.exp((18 - i) / 0.8)));
const asSpectrum = (reflectance: ArrayLike<number>) => ({ firstNm: 380, stepNm: 10, reflectance });

test("metamerism of a curve and the smoothest curve of its colour is nothing at the reference and something elsewhere", () => {
  const smooth = smoothReflectance(curveLab(step, d65), d65);
  if (!smooth.ok) expect.fail("no curve");
  const { index, uncorrected, atReference } = metamerism(
    asSpectrum(step),
    asSpectrum(smooth.value),
    d65,
    f11,
  );
  expect(atReference).toBeLessThan(1e-6);
  expect(index).toBeGreaterThan(1);
  expect(index).toBeCloseTo(uncorrected, 5);
});

test("metamerism takes a residual out: a curve against a lighter one of the same shape has no index", () => {
  const lighter = step.map((value) => 1.1 * value);
  const { index, uncorrected, atReference } = metamerism(asSpectrum(step), asSpectrum(lighter), d65, f11);
  expect(index).toBeLessThan(1e-10);
  expect(uncorrected).toBeGreaterThan(1);
  expect(atReference).toBeGreaterThan(1);
});
