import { expect, test } from "vitest";
import type { Estimated } from "../../../src/core/quality/estimates/estimate.js";
import type { Review } from "../../../src/core/quality/review/review-model.js";
import { reviewReport } from "../../../src/report/review/report.js";

const told: Estimated = { value: 1, standardError: 0.1, told: true, loadsToHalve: 60 };

function textOf(loadsToHalve: number | null): string {
  const review: Review = {
    baths: [],
    estimates: {
      brick: {
        timeFactor: { ...told, told: false, loadsToHalve },
        dragOutMlPerDm2: told,
        strengthExponent: told,
        activationEnergyKJPerMol: told,
        uptakeMlPerDm2: told,
        readings: 12,
        lastReadings: null,
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
    expect(textOf(never)).toContain("factor on times: the log does not show it yet");
    expect(textOf(never)).not.toContain("halve its error");
  }
});
