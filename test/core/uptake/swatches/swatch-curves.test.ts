import { expect, test } from "vitest";
import type { Dye } from "../../../../src/core/model/batch.js";
import { swatchSet } from "../../../../src/core/uptake/swatches/swatch-curves.js";
import { dye } from "../../plan/sample.js";

const grey = (seconds: number, lightness: number) => ({
  seconds,
  colour: { kind: "lab" as const, lab: [lightness, 0, 0] as const },
});

/** The warnings for a dye whose bare swatch was lighter than its base is now. */
const codes = (lighterBy: number): string[] =>
  swatchSet({
    ...dye,
    base: { name: "stone", lab: [50, 0, 0] },
    swatches: [grey(0, 50 + lighterBy), grey(30, 40), grey(120, 30)],
  } satisfies Dye).faults.map(({ code }) => code);

test("swatches are estimates from where their base differs by 0.5 CIEDE2000 from the base as it is now", () => {
  // For greys around L* 50, CIEDE2000 is the difference of L*, to 1 in 4,000.
  expect(codes(0.498)).toEqual([]);
  expect(codes(0.502)).toEqual(["base-moved"]);
});
