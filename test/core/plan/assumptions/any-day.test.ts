import { expect, test } from "vitest";
import { assumption } from "../../../../src/core/model/assumption.js";
import { ofAnyDay } from "../../../../src/core/plan/assumptions/any-day.js";

test("what several days assume is named once, without the share of the cost of one of them", () => {
  const uptake = (costShare: number) =>
    assumption("assumed-uptake", ["dyes", "coral", "uptake"], "an uptake of 0.03 mL is assumed", {
      costShare,
    });
  const times = assumption("assumed-handling", ["handling"], "times are assumed", { help: "time your own" });
  expect(ofAnyDay([uptake(0.02), times, uptake(0.004), times])).toEqual([
    assumption("assumed-uptake", ["dyes", "coral", "uptake"], "an uptake of 0.03 mL is assumed"),
    times,
  ]);
});
