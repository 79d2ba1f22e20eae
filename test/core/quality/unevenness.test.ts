import { expect, test } from "vitest";
import { ciede2000 } from "../../../src/core/colour/difference/ciede2000.js";
import type { Lab } from "../../../src/core/model/colour.js";
import { unevenness } from "../../../src/core/quality/unevenness.js";

const labs: readonly Lab[] = [
  [50, 10, 20],
  [52, 10, 20],
  [51, 13, 20],
];

test("unevenness gives the mean colour, the mean difference from it, and the largest between two readings", () => {
  const { readings, lab, meanDeltaE00, largestDeltaE00 } = unevenness(labs);
  expect(readings).toBe(3);
  expect(lab).toEqual([51, 11, 20]);
  expect(meanDeltaE00).toBeCloseTo(labs.reduce((sum, one) => sum + ciede2000(one, lab), 0) / 3, 12);
  const pairs = [ciede2000(labs[0]!, labs[1]!), ciede2000(labs[0]!, labs[2]!), ciede2000(labs[1]!, labs[2]!)];
  expect(largestDeltaE00).toBe(Math.max(...pairs));
});

test("equal readings are even", () => {
  expect(unevenness([labs[0]!, labs[0]!])).toMatchObject({ meanDeltaE00: 0, largestDeltaE00: 0 });
});
