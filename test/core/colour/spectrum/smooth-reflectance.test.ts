import { expect, test } from "vitest";
import { labToXyz } from "../../../../src/core/colour/cielab.js";
import { ciede2000 } from "../../../../src/core/colour/difference/ciede2000.js";
import { srgbToLab } from "../../../../src/core/colour/screen/srgb.js";
import { carryOver } from "../../../../src/core/colour/spectrum/convert-reading.js";
import { insideLimits } from "../../../../src/core/colour/spectrum/optimal-limits.js";
import { smoothReflectance } from "../../../../src/core/colour/spectrum/smooth-reflectance.js";
import { curveLab, spectrumLab, spectrumXyz } from "../../../../src/core/colour/spectrum/spectrum.js";
import { tableWeights } from "../../../../src/core/colour/spectrum/weights.js";
import type { Lab } from "../../../../src/core/model/colour.js";
import { randomNumbers } from "../../../tools/random-numbers.js";

const d65 = { illuminant: "D65", observer: 10 } as const;
const readings = (["A", "D50", "D65", "F2", "F11", "LED-B3"] as const).flatMap((illuminant) =>
  ([2, 10] as const).map((observer) => ({ illuminant, observer })),
);
/** A surface that goes from one level to another somewhere in the spectrum, as most dyed ones do. */
function randomSurface(random: () => number): number[] {
  const [middle, width, low, high] = [random(), 0.02 + 0.2 * random(), random(), random()];
  return Array.from(
    { length: 36 },
    (_, i) => 0.02 + 0.9 * (low + (high - low) / (1 + Math.exp((i / 35 - middle) / width))),
  );
}
const off = (one: Lab, other: Lab): number => Math.max(...one.map((value, k) => Math.abs(value - other[k]!)));

test("smoothReflectance reproduces 10,000 random colours inside the optimal-colour limits to 1e-6, within 0..1", () => {
  const random = randomNumbers(5);
  const { white } = tableWeights(d65);
  let found = 0;
  let without = 0;
  while (found < 10_000) {
    const lab: Lab = [100 * random(), 400 * random() - 200, 400 * random() - 200];
    const room = insideLimits(labToXyz(lab, white), d65);
    if (room <= 0) continue;
    const curve = smoothReflectance(lab, d65);
    if (!curve.ok) {
      // Only in the thin shell that 36 samples cannot reach, and said so.
      expect(room).toBeLessThan(0.2);
      expect(curve.faults[0]!.code).toBe("colour-no-curve");
      without++;
      continue;
    }
    found++;
    expect(off(curveLab(curve.value, d65), lab)).toBeLessThan(1e-6);
    if (curve.value.some((r) => !(r >= 0 && r <= 1))) expect.fail(`${lab}: a value outside 0..1`);
  }
  expect(without).toBeLessThan(80);
});

test("smoothReflectance reproduces random surfaces under every reading to 1e-6", () => {
  const random = randomNumbers(7);
  for (const reading of readings) {
    for (let n = 0; n < 100; n++) {
      const lab = curveLab(randomSurface(random), reading);
      const curve = smoothReflectance(lab, reading);
      if (!curve.ok) expect.fail(curve.faults[0]!.message);
      expect(off(curveLab(curve.value, reading), lab)).toBeLessThan(1e-6);
      expect(
        off(spectrumLab({ firstNm: 380, stepNm: 10, reflectance: curve.value }, reading), lab),
      ).toBeLessThan(1e-6);
    }
  }
});

test("smoothReflectance has no greater slope than any other curve of the same colour", () => {
  const curve = smoothReflectance([60, 40, 25], d65);
  if (!curve.ok) expect.fail("no curve");
  const slope = (reflectance: ArrayLike<number>): number => {
    const z = Array.from(reflectance, (value) => Math.atanh(2 * value - 1));
    return z.slice(1).reduce((sum, value, i) => sum + (value - z[i]!) ** 2, 0);
  };
  const random = randomNumbers(11);
  for (let n = 0; n < 200; n++) {
    const disturbed = curve.value.map((r) => r + 0.02 * (random() - 0.5) * Math.min(r, 1 - r));
    const smooth = smoothReflectance(curveLab(disturbed, d65), d65);
    if (!smooth.ok) expect.fail("no curve");
    expect(slope(smooth.value)).toBeLessThan(slope(disturbed));
  }
});

test("smoothReflectance of a grey is flat, of white 1 and of black 0", () => {
  for (const [L, r] of [
    [100, 1],
    [50, 0.184186518],
    [0, 0],
  ] as const) {
    const curve = smoothReflectance([L, 0, 0], d65);
    if (!curve.ok) expect.fail("no curve");
    for (const value of curve.value) expect(value).toBeCloseTo(r, 8);
  }
});

test("smoothReflectance refuses a colour that no surface can have and says so", () => {
  for (const lab of [
    [50, 120, 120],
    [99, 50, 0],
    [101, 0, 0],
    [-1, 0, 0],
    [5, 60, 0],
    [Number.NaN, 0, 0],
  ] as const) {
    const curve = smoothReflectance(lab, d65);
    expect(curve.ok).toBe(false);
    expect(curve.faults[0]!.code).toBe("colour-outside-limits");
  }
});

test("smoothReflectance finds a curve for the corners, edges and middle of sRGB", () => {
  const reading = { illuminant: "D65", observer: 2 } as const;
  for (let n = 0; n < 6 ** 3; n++) {
    const lab = srgbToLab([(n % 6) / 5, (Math.floor(n / 6) % 6) / 5, Math.floor(n / 36) / 5]);
    const curve = smoothReflectance(lab, reading);
    if (!curve.ok) expect.fail(curve.faults[0]!.message);
    expect(off(curveLab(curve.value, reading), lab)).toBeLessThan(1e-6);
  }
});

test("insideLimits is positive for random reflectance and nothing for reflectance of 0 and 1 with two jumps", () => {
  const random = randomNumbers(13);
  for (const reading of readings.filter(({ illuminant }) => illuminant !== "F11")) {
    const reflectance = Array.from({ length: 81 }, random);
    expect(
      insideLimits(spectrumXyz({ firstNm: 380, stepNm: 5, reflectance }, reading), reading),
    ).toBeGreaterThan(0);
  }
  for (let n = 0; n < 100; n++) {
    const [from, to] = [Math.floor(60 * random()), Math.floor(81 * random())];
    const block = Array.from({ length: 81 }, (_, i) => (i >= from && i <= to ? 1 : 0));
    expect(
      Math.abs(insideLimits(spectrumXyz({ firstNm: 380, stepNm: 5, reflectance: block }, d65), d65)),
    ).toBeLessThan(1e-3);
  }
});

test("carryOver keeps a grey and keeps a colour whose reading does not change", () => {
  const grey = carryOver([50, 0, 0], d65, { illuminant: "A", observer: 2 });
  if (!grey.ok) expect.fail("no colour");
  expect(off(grey.value, [50, 0, 0])).toBeLessThan(1e-9);
  expect(carryOver([50, 150, 0], d65, d65)).toEqual({ ok: true, value: [50, 150, 0], faults: [] });
  expect(carryOver([50, 150, 150], d65, { illuminant: "A", observer: 2 }).ok).toBe(false);
});

test("carryOver comes nearer to the real colour of random surfaces than leaving the values as they are", () => {
  const random = randomNumbers(17);
  for (const to of [
    { illuminant: "A", observer: 10 },
    { illuminant: "D65", observer: 2 },
    { illuminant: "F11", observer: 10 },
  ] as const) {
    const errors: number[] = [];
    const untouched: number[] = [];
    for (let n = 0; n < 100; n++) {
      const surface = randomSurface(random);
      const lab = curveLab(surface, d65);
      const carried = carryOver(lab, d65, to);
      if (!carried.ok) expect.fail(carried.faults[0]!.message);
      errors.push(ciede2000(curveLab(surface, to), carried.value));
      untouched.push(ciede2000(curveLab(surface, to), lab));
    }
    const median = (values: number[]): number => values.sort((a, b) => a - b)[50]!;
    expect(median(errors)).toBeLessThan(median(untouched));
  }
});
