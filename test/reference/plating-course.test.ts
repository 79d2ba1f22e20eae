import { expect, test } from "vitest";
import { boxVolumeL, cylinderSideArea } from "../../src/core/bath/geometry.js";

const CM_PER_FT = 30.48;
const L_PER_FT3 = CM_PER_FT ** 3 / 1000;

test("a tank of 3.0 by 6.0 by 4.5 ft holds 81 ft³, 605.9 US gal", () => {
  // source: platingCourse
  const litres = boxVolumeL(3 * CM_PER_FT, 6 * CM_PER_FT, 4.5 * CM_PER_FT);
  expect(litres / L_PER_FT3).toBeCloseTo(81, 10);
  expect(litres / 3.785411784).toBeCloseTo(605.9, 1);
});

test("the side of a piston 30 in long and 4 in across is 376.8 in², with the page's π of 3.14", () => {
  // source: platingCourse
  expect((cylinderSideArea(4, 30) * 3.14) / Math.PI).toBeCloseTo(376.8, 10);
});
