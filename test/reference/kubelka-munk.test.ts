import { expect, test } from "vitest";
import { kOverS, reflectanceOf, relativeStrength } from "../../src/core/colour/spectrum/kubelka-munk.js";

// source: kubelkaMunk1931 reflectance and K/S, computed to 8 decimals
const forward: readonly (readonly [number, number])[] = [
  [0.01, 49.005],
  [0.02, 24.01],
  [0.03, 15.68166667],
  [0.04, 11.52],
  [0.05, 9.025],
  [0.08, 5.29],
  [0.1, 4.05],
  [0.15, 2.40833333],
  [0.2, 1.6],
  [0.3, 0.81666667],
  [0.4, 0.45],
  [0.5, 0.25],
  [0.6, 0.13333333],
  [0.7, 0.06428571],
  [0.8, 0.025],
  [0.9, 0.00555556],
];
// source: kubelkaMunk1931 K/S and reflectance, computed to 8 decimals
const inverse: readonly (readonly [number, number])[] = [
  [0.01, 0.86822553],
  [0.05, 0.72984379],
  [0.1, 0.64174243],
  [0.25, 0.5],
  [0.5, 0.38196601],
  [1, 0.26794919],
  [2, 0.17157288],
  [5, 0.08392022],
  [9.025, 0.05],
  [15, 0.03128058],
  [20, 0.02382304],
  [25, 0.01923789],
];

test("kOverS returns the tabled values to 1e-7", () => {
  for (const [reflectance, ks] of forward)
    expect(Math.abs(kOverS(reflectance) - ks)).toBeLessThan(1e-7 * 0.5);
});

test("reflectanceOf returns the tabled values to 1e-7", () => {
  for (const [ks, reflectance] of inverse)
    expect(Math.abs(reflectanceOf(ks) - reflectance)).toBeLessThan(1e-7 * 0.5);
});

test("reflectanceOf keeps its digits where K/S is huge", () => {
  expect(reflectanceOf(1e9) * 2e9).toBeCloseTo(1, 8);
});

test("relativeStrength returns the strengths of a study of mordanted silk", () => {
  // common practice, no source read but a table of colour values: K/S 11.85 against 17.46 and 16.62
  expect(relativeStrength(11.85, 17.46)).toBeCloseTo(147.342, 3);
  expect(relativeStrength(11.85, 16.62)).toBeCloseTo(140.253, 3);
});
