import { expect, test } from "vitest";
import type { Estimated } from "../../../src/core/quality/estimates/estimate.js";
import type {
  Review,
  ReviewBath,
  ReviewEstimates,
  ReviewPoint,
} from "../../../src/core/quality/review/review-model.js";
import { reviewReport } from "../../../src/report/review/report.js";

const told: Estimated = { value: 1, standardError: 0.1, told: true, loadsToHalve: 60 };

function textOf(
  loadsToHalve: number | null,
  changes: Partial<ReviewEstimates> = {},
  baths: readonly ReviewBath[] = [],
): string {
  const review: Review = {
    baths,
    estimates: {
      brick: {
        timeFactor: { ...told, told: false, loadsToHalve },
        dragOutMlPerDm2: told,
        strengthExponent: told,
        activationEnergyKJPerMol: told,
        uptakeMlPerDm2: told,
        readings: 12,
        lastReadings: null,
        ...changes,
      },
    },
    lots: [],
    dyes: [],
    use: [],
    actions: [],
    paste: "",
  };
  return JSON.stringify(reviewReport(review).blocks);
}

test("more loads are named for a figure only where somebody would dip them: up to 300", () => {
  expect(textOf(300)).toContain("; 300 more loads halve its error.");
  for (const never of [301, null]) {
    expect(textOf(never)).toContain("factor on times: the log does not show it well enough yet");
    expect(textOf(never)).not.toContain("halve its error");
  }
});

test("an exponent that only goes with the uptake is shown with the value that is pasted", () => {
  const text = textOf(300, { strengthExponent: { ...told, value: 2, told: false, withUptake: 1.534 } });
  expect(text).toContain(
    "exponent of strength: the log does not show it alone; 1.53 goes with the uptake, and only with it.",
  );
  expect(text).toContain('"with the uptake"');
  expect(text).not.toContain("exponent of strength: the log does not show it well enough");
});

test("one reading is one", () => {
  expect(textOf(null, { readings: 1 })).toContain('"brick, from 1 reading"');
  expect(textOf(null, { readings: 2 })).toContain('"brick, from 2 readings"');
});

test("the median of an even number of loads lies between the two in the middle", () => {
  const row = (...off: readonly number[]): string => {
    const points = off.map((deltaE00) => ({ deltaE00 }) as ReviewPoint);
    const text = textOf(null, {}, [
      { bath: "six", loads: 9, parts: 90, goodShare: null, points, charts: [], runs: [] },
    ]);
    return /\["six",9,90,"not inspected",[^\]]*\]/.exec(text)![0];
  };
  expect(row(5, 1, 2, 4)).toBe('["six",9,90,"not inspected",4,3]');
  expect(row(5, 1, 2)).toBe('["six",9,90,"not inspected",3,2]');
  expect(row()).toBe('["six",9,90,"not inspected",0,null]');
});
