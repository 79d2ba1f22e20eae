import fc from "fast-check";
import { expect, test } from "vitest";
import { chromaticity, chromaticityToXyz } from "../../../src/core/colour/chromaticity.js";
import { labToLch, labToXyz, lchToLab, xyzToLab } from "../../../src/core/colour/cielab.js";
import { luvToXyz, xyzToLuv } from "../../../src/core/colour/cieluv.js";
import {
  decodeSrgb,
  encodeSrgb,
  labToSrgb,
  srgbToLab,
  srgbToXyz,
  xyzToSrgb,
} from "../../../src/core/colour/screen/srgb.js";
import {
  kOverS,
  reflectanceOf,
  withoutSurface,
  withSurface,
} from "../../../src/core/colour/spectrum/kubelka-munk.js";
import { tableWeights } from "../../../src/core/colour/spectrum/weights.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const lab = fc.tuple(between(0, 100), between(-128, 128), between(-128, 128));
const rgb = fc.tuple(between(0, 1), between(0, 1), between(0, 1));
const reading = fc.record({
  illuminant: fc.constantFrom("A", "D50", "D65", "F2", "F11", "LED-B3"),
  observer: fc.constantFrom(2, 10),
} as const);
const near = (actual: readonly number[], expected: readonly number[]): void => {
  actual.forEach((value, k) => {
    expect(Math.abs(value - expected[k]!)).toBeLessThan(1e-9);
  });
};

test("CIELAB returns from XYZ to 1e-9 under every reading", () => {
  fc.assert(
    fc.property(lab, reading, (colour, under) => {
      const { white } = tableWeights(under);
      near(xyzToLab(labToXyz(colour, white), white), colour);
    }),
  );
});

test("sRGB in gamut returns from XYZ and from CIELAB to 1e-9", () => {
  fc.assert(
    fc.property(rgb, (colour) => {
      // Encoding and decoding as published leave a step of 3e-8 between them at 0.04045.
      fc.pre(colour.every((value) => Math.abs(value - 0.04045) > 1e-6));
      near(xyzToSrgb(srgbToXyz(colour)), colour);
      near(labToSrgb(srgbToLab(colour)), colour);
    }),
    { numRuns: 1000 },
  );
});

test("sRGB out of gamut returns too, nothing is clipped", () => {
  fc.assert(
    fc.property(between(-1, 2), (linear) => {
      near([decodeSrgb(encodeSrgb(linear))], [linear]);
    }),
  );
});

test("LCh, CIELUV and chromaticity return to what they came from", () => {
  fc.assert(
    fc.property(
      lab,
      fc.tuple(between(0.1, 100), between(0.1, 100), between(0.1, 100)),
      reading,
      (colour, xyz, under) => {
        const { white } = tableWeights(under);
        near(lchToLab(labToLch(colour)), colour);
        near(luvToXyz(xyzToLuv(xyz, white), white), xyz);
        near(chromaticityToXyz(chromaticity(xyz)!, xyz[1]), xyz);
      },
    ),
  );
  expect(luvToXyz(xyzToLuv([0, 0, 0], [95, 100, 108]), [95, 100, 108])).toEqual([0, 0, 0]);
});

test("reflectance returns from K/S and from the surface correction", () => {
  fc.assert(
    fc.property(between(0.001, 1), between(0, 0.1), between(0, 0.7), (reflectance, k1, k2) => {
      near([reflectanceOf(kOverS(reflectance))], [reflectance]);
      near([withoutSurface(withSurface(reflectance, { k1, k2 }), { k1, k2 })], [reflectance]);
    }),
  );
});
