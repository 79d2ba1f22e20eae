import { expect, test } from "vitest";
import type { Plan } from "../../../src/core/plan/plan-model.js";
import { planBlocks } from "../../../src/report/plan/blocks.js";
import { planned, printed, withBath } from "./planned.js";

const plan = planned();

/** A sheet whose water and disposal have so large a share of a cost of 100. */
function withSmallLines(share: number): Plan {
  const lines = {
    ...{ blank: 100 - 200 * share, dye: 0, water: 100 * share, energy: 0, labour: 0 },
    ...{ consumables: 0, equipment: 0, disposal: 100 * share },
  };
  return { ...plan, totals: { ...plan.totals, lines, cost: 100, good: 10 } };
}

test("cost lines under 1 % are printed together, and add up; from 1 % on each is printed", () => {
  expect(printed(planBlocks(withSmallLines(0.0099)))).toContain("water, disposal 1.98 0.20 2.0 all 100.00");
  expect(printed(planBlocks(withSmallLines(0.01)))).toMatch(
    /water 1\.00 0\.10 1\.0.*disposal 1\.00 0\.10 1\.0/,
  );
});

test("a single small line keeps its name", () => {
  const { totals } = withSmallLines(0.0099);
  const lines = { ...totals.lines!, disposal: 2, blank: 97.01 };
  const sheet = printed(planBlocks({ ...plan, totals: { ...totals, lines } }));
  expect(sheet).toContain("water 0.99 0.10 1.0");
});

test("the cost bears a dagger where an assumption carries 5 % of it, not under that", () => {
  const assumed = (share: number) =>
    printed(
      planBlocks({
        ...plan,
        totals: {
          ...plan.totals,
          restsOnAssumed: ["uptake"],
          assumedShares: [{ what: "uptake", share }],
        },
      }),
    );
  expect(assumed(0.05)).toContain("† rests on an assumed uptake: see the end.");
  expect(assumed(0.05)).toContain("Costs in EUR†");
  expect(assumed(0.049)).not.toContain("†");
});

test("a line says how long a fresh bath lasts, what ends it, and whether that is assumed", () => {
  const { life } = plan.baths[0]!;
  const sheet = (endedBy: typeof life.endedBy, restsOnAssumed: typeof life.restsOnAssumed = []) =>
    printed(
      planBlocks(withBath(plan, { life: { ...life, loads: 12, parts: 288, endedBy, restsOnAssumed } })),
    );
  expect(sheet("load-limit")).toContain("coral over 12 loads, 288 parts (not by dye alone)");
  expect(sheet("longest-dip", ["uptake"])).toContain("coral 12 loads, 288 parts (longest dip; assumed)");
  expect(sheet("shelf-life", ["uptake"])).toContain(
    "coral 12 loads, 288 parts (shelf life). More: dipwright bath.",
  );
});
