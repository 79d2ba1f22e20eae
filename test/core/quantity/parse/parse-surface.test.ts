import { expect, test } from "vitest";
import { parseSurface, wettedWallDm2 } from "../../../../src/core/quantity/parse/parse-surface.js";

test.each([
  ["450 cm2", "area", 450],
  ["4.5 dm2", "area", 450],
  ["450 cm2 ± 20 cm2", "area", 450],
  ["30 cm x 15 cm", "box", 450],
  ["30cm×15cm", "box", 450],
  ["300 mm * 15 cm", "box", 450],
  ["30 x 15 cm", "box", 450],
  ["12 in x 6 in", "box", 464.5152],
  ["diameter 32 cm", "cylinder", 804.2477],
  ["32 cm diameter", "cylinder", 804.2477],
  ["ø 320 mm", "cylinder", 804.2477],
])("parseSurface reads %j", (text, shape, cm2) => {
  const outcome = parseSurface(text);
  expect(outcome.faults).toEqual([]);
  expect(outcome.ok && outcome.value.shape).toBe(shape);
  expect(outcome.ok && outcome.value.value).toBeCloseTo(cm2, 4);
});

test.each([
  ["450", "write 450 cm2 or 4.5 dm2"],
  ["30 cm", "write diameter 30 cm of a round tank, or both sides such as 30 cm x 20 cm"],
  ["9 in", "write diameter 9 in of a round tank, or both sides such as 9 in x 6 in"],
  ["30 x 15", "write 30 cm x 15 cm"],
  ["diameter 32", "write 450 cm2, or 30 cm x 15 cm, or diameter 32 cm"],
  ["0 cm x 4 cm", "write 450 cm2, or 30 cm x 15 cm, or diameter 32 cm"],
  ["round", "write 450 cm2, or 30 cm x 15 cm, or diameter 32 cm"],
])("parseSurface refuses %j and says what to write", (text, help) => {
  expect(parseSurface(text).faults.map((f) => f.help)).toEqual([help]);
});

test("wettedWallDm2 is the floor and the walls up to the liquor", () => {
  // 1 L in a cylinder of 10 cm: floor 78.54 cm2, depth 12.732 cm, wall 31.416 x 12.732 = 400 cm2.
  const cylinder = { shape: "cylinder", diameterCm: 10, value: 25 * Math.PI } as const;
  expect(wettedWallDm2(cylinder, 1)).toBeCloseTo(0.78539816 + 4, 8);
});

test.each([
  ["450 cm2 ± 9 cm2", 0.02],
  ["diameter 32 cm ± 0.32 cm", 0.02],
  ["30 cm ± 3 % x 15 cm ± 4 %", 0.05],
  ["30 cm x 15 cm ± 0.3 cm", 0.02],
])("the half width in %j is that of the surface", (text, share) => {
  const outcome = parseSurface(text);
  expect(outcome.faults).toEqual([]);
  expect(outcome.ok && outcome.value.plusMinus! / outcome.value.value).toBeCloseTo(share, 12);
});
