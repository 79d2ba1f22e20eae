import { expect, test } from "vitest";
import { assumption } from "../../../src/core/model/assumption.js";
import { assumedBlocks, assumedRecords } from "../../../src/report/words/assumed.js";

const dragOut = (costShare: number) =>
  assumption("assumed-drag-out", ["handling", "dragOut"], "0.8 mL per dm2 is assumed", {
    costShare,
    help: "weigh ten parts",
  });

test("an assumption says how much of the cost rests on it, under 1 % below half a percent, and what to do", () => {
  const said = (costShare: number) => assumedRecords([dragOut(costShare)])[0]!.message;
  expect(said(0.0049)).toBe("0.8 mL per dm2 is assumed (under 1 % of the cost): weigh ten parts");
  expect(said(0.0051)).toBe("0.8 mL per dm2 is assumed (1 % of the cost): weigh ten parts");
  expect(said(0.124)).toBe("0.8 mL per dm2 is assumed (12 % of the cost): weigh ten parts");
});

test("JSON has of an assumption its code, path and text", () => {
  expect(assumedRecords([assumption("second-dip", ["rework"], "a second dip saves half")])).toEqual([
    { code: "second-dip", path: ["rework"], message: "a second dip saves half" },
  ]);
});

test("a report names each assumption once", () => {
  const [, list] = assumedBlocks([dragOut(0.1), dragOut(0.1), dragOut(0.2)]);
  expect(list).toMatchObject({
    items: [
      "0.8 mL per dm2 is assumed (10 % of the cost): weigh ten parts.",
      "0.8 mL per dm2 is assumed (20 % of the cost): weigh ten parts.",
    ],
  });
});
