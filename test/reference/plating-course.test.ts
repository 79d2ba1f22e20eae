import { expect, test } from "vitest";
import { wettedWallDm2 } from "../../src/core/quantity/parse/parse-surface.js";

const CM_PER_FT = 30.48;
const CM2_PER_IN2 = 2.54 ** 2;

test("605.9 US gal in a tank of 3.0 by 6.0 ft are 4.5 ft deep: wall and floor of 99 ft²", () => {
  // source: platingCourse
  const [lengthCm, widthCm] = [6 * CM_PER_FT, 3 * CM_PER_FT];
  const tank = { shape: "box", lengthCm, widthCm, value: lengthCm * widthCm } as const;
  const ft2 = (wettedWallDm2(tank, 605.9 * 3.785411784) * 100) / CM_PER_FT ** 2;
  expect((ft2 - 3 * 6) / (2 * (3 + 6))).toBeCloseTo(4.5, 3);
});

test("the side of a piston 30 in long and 4 in across is 376.8 in², with the page's π of 3.14", () => {
  // source: platingCourse
  const endIn2 = Math.PI * 4;
  const piston = { shape: "cylinder", diameterCm: 4 * 2.54, value: endIn2 * CM2_PER_IN2 } as const;
  const in2 = (wettedWallDm2(piston, (endIn2 * 30 * 2.54 ** 3) / 1000) * 100) / CM2_PER_IN2;
  expect(((in2 - endIn2) * 3.14) / Math.PI).toBeCloseTo(376.8, 10);
});
