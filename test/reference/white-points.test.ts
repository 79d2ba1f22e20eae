import { expect, test } from "vitest";
import { illuminantPower } from "../../src/core/colour/spectrum/cie-tables.js";
import { curveWeights, tableWeights } from "../../src/core/colour/spectrum/weights.js";
import type { IlluminantName, ObserverName } from "../../src/core/model/colour.js";

const whiteOf = (illuminant: IlluminantName, observer: ObserverName) =>
  tableWeights({ illuminant, observer }).white;

// source: astmE308 published white points, 3 decimals (2001 edition, written from memory, compared with transcriptions).
// The last column is how far the Z of a 5 nm sum of 380 to 780 nm may lie from them; half a printed digit is added.
const astm: readonly [IlluminantName, ObserverName, number, number, number][] = [
  ["A", 2, 109.85, 35.585, 0.004],
  ["D50", 2, 96.422, 82.521, 0.009],
  ["D65", 2, 95.047, 108.883, 0.004],
  ["F2", 2, 99.186, 67.393, 0.004],
  ["F11", 2, 100.962, 64.35, 0.004],
  ["A", 10, 111.144, 35.2, 0.004],
  ["D50", 10, 96.72, 81.427, 0.004],
  ["D65", 10, 94.811, 107.304, 0.02],
  ["F2", 10, 103.279, 69.027, 0.004],
  ["F11", 10, 103.863, 65.607, 0.004],
];
test.each(astm)(
  "the white under %s, %d° observer is the published one within the 5 nm sum",
  (illuminant, observer, X, Z, room) => {
    const white = whiteOf(illuminant, observer);
    expect(white[1]).toBeCloseTo(100, 10);
    expect(Math.abs(white[0] - X)).toBeLessThanOrEqual(0.004 + 0.0005);
    expect(Math.abs(white[2] - Z)).toBeLessThanOrEqual(room + 0.0005);
  },
);

// source: cie15 white points, 2 decimals; the 5 nm sum may differ by 0.01 from them.
const cie: readonly [IlluminantName, ObserverName, number, number][] = [
  ["A", 2, 109.85, 35.58],
  ["D50", 2, 96.42, 82.51],
  ["D65", 2, 95.04, 108.88],
  ["A", 10, 111.14, 35.2],
  ["D50", 10, 96.72, 81.43],
  ["D65", 10, 94.81, 107.32],
];
test.each(cie)(
  "the white under %s, %d° observer is the printed one to 2 decimals",
  (illuminant, observer, X, Z) => {
    const white = whiteOf(illuminant, observer);
    expect(Math.abs(white[0] - X)).toBeLessThan(0.0051);
    expect(Math.abs(white[2] - Z)).toBeLessThan(0.0051);
  },
);

test("the weights for 36 samples keep the white of the 5 nm sum, so F11 is not summed at 10 nm", () => {
  for (const illuminant of ["A", "D50", "D65", "F2", "F11", "LED-B3"] as const)
    for (const observer of [2, 10] as const)
      curveWeights({ illuminant, observer }).white.forEach((value, k) => {
        expect(value).toBeCloseTo(whiteOf(illuminant, observer)[k]!, 9);
      });
});

test("illuminant A is the CIE formula for 2848 K within 4 parts per million", () => {
  // source: isoCie11664p2 S = 100 (560/λ)⁵ (exp(1.435e7/(2848·560)) - 1)/(exp(1.435e7/(2848 λ)) - 1)
  illuminantPower.A.forEach((power, i) => {
    const nm = 380 + 5 * i;
    const planck = (at: number): number => Math.expm1(1.435e7 / (2848 * at));
    const formula = 100 * (560 / nm) ** 5 * (planck(560) / planck(nm));
    expect(Math.abs(power / formula - 1)).toBeLessThan(4.5e-6);
  });
});

// source: cie15 daylight components S0, S1, S2, 380 to 780 nm by 10; the values between are linear by definition.
const daylight: readonly (readonly number[])[] = [
  [
    63.4, 65.8, 94.8, 104.8, 105.9, 96.8, 113.9, 125.6, 125.5, 121.3, 121.3, 113.5, 113.1, 110.8, 106.5,
    108.8, 105.3, 104.4, 100, 96, 95.1, 89.1, 90.5, 90.3, 88.4, 84, 85.1, 81.9, 82.6, 84.9, 81.3, 71.9, 74.3,
    76.4, 63.3, 71.7, 77, 65.2, 47.7, 68.6, 65,
  ],
  [
    38.5, 35, 43.4, 46.3, 43.9, 37.1, 36.7, 35.9, 32.6, 27.9, 24.3, 20.1, 16.2, 13.2, 8.6, 6.1, 4.2, 1.9, 0,
    -1.6, -3.5, -3.5, -5.8, -7.2, -8.6, -9.5, -10.9, -10.7, -12, -14, -13.6, -12, -13.3, -12.9, -10.6, -11.6,
    -12.2, -10.2, -7.8, -11.2, -10.4,
  ],
  [
    3, 1.2, -1.1, -0.5, -0.7, -1.2, -2.6, -2.9, -2.8, -2.6, -2.6, -1.8, -1.5, -1.3, -1.2, -1, -0.5, -0.3, 0,
    0.2, 0.5, 2.1, 3.2, 4.1, 4.7, 5.1, 6.7, 7.3, 8.6, 9.8, 10.2, 8.3, 9.6, 8.5, 7, 7.6, 8, 6.7, 5.2, 7.4, 6.8,
  ],
];
test.each([
  ["D65", -0.295, -0.689, 0.0009],
  ["D50", -1.039, 0.363, 0.00051],
] as const)("%s is the sum of the daylight components", (name, m1, m2, room) => {
  illuminantPower[name].forEach((power, i) => {
    const at = (component: readonly number[]): number =>
      i % 2 === 0 ? component[i / 2]! : (component[(i - 1) / 2]! + component[(i + 1) / 2]!) / 2;
    expect(
      Math.abs(at(daylight[0]!) + m1 * at(daylight[1]!) + m2 * at(daylight[2]!) - power),
    ).toBeLessThanOrEqual(room);
  });
});
