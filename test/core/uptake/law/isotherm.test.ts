import { expect, test } from "vitest";
import { uptakeAtStrength } from "../../../../src/core/uptake/law/isotherm.js";

test("a fresh bath takes up 1 and an empty one 0, whatever the saturation", () => {
  for (const saturation of [undefined, 0, 0.1, 0.8, 50]) {
    expect(uptakeAtStrength(1, saturation)).toBeCloseTo(1, 15);
    expect(uptakeAtStrength(0, saturation)).toBe(0);
  }
});

test("a small saturation keeps the uptake of a weak bath near that of a fresh one, a large one is linear", () => {
  expect(uptakeAtStrength(0.5, 0.01)).toBeCloseTo(0.990196, 6);
  expect(uptakeAtStrength(0.5, 1e9)).toBeCloseTo(0.5, 8);
  expect(uptakeAtStrength(2, 0.8)).toBeLessThan(2);
});
