import { expect, test } from "vitest";
import { sheetTotal } from "../../../src/core/cost/line/cost-sheet.js";
import type { Batch, Order } from "../../../src/core/model/batch.js";
import { planBatch } from "../../../src/core/plan/plan.js";
import type { Plan } from "../../../src/core/plan/plan-model.js";
import { planResults } from "../../../src/core/plan/results/plan-results.js";
import { batch, hook } from "./sample.js";

const bare: Order = { index: 2, part: hook, quantity: 30 };

function planned(input: Batch): Plan {
  const plan = planBatch({ ...input, yield: 0.9 });
  if (!plan.ok) throw new Error(plan.faults[0]!.message);
  return plan.value;
}

test("undyed parts cost their blanks and what every part uses up; none of them is lost, dipped or dried", () => {
  const { orders } = planned({ ...batch, orders: [...batch.orders, bare] });
  const order = orders[2]!;
  expect(order).toMatchObject({ part: "hook", shade: "none", quantity: 30, started: 30, restsOnAssumed: [] });
  // 30 x (1.84 for the blank + 0.02).
  expect(order.total).toBeCloseTo(55.8, 12);
  expect(sheetTotal({ ...order.lines!, blank: 0, consumables: 0 })).toBe(0);
});

test("undyed parts change nothing for the orders that are dyed, and the costs still add up", () => {
  const before = planned(batch);
  const plan = planned({ ...batch, orders: [...batch.orders, bare] });
  for (const [i, { total, started }] of before.orders.entries()) {
    expect(plan.orders[i]!.total).toBeCloseTo(total!, 12);
    expect(plan.orders[i]!.started).toBe(started);
  }
  expect(plan.baths).toEqual(before.baths);
  expect(plan.timeline).toEqual(before.timeline);
  expect(plan.colours).toEqual(before.colours);
  expect(plan.totals.cost).toBeCloseTo(before.totals.cost! + 55.8, 9);
});

test("a batch of undyed parts alone has no bath to work", () => {
  const plan = planned({ ...batch, orders: [{ ...bare, index: 0 }] });
  expect([plan.baths, plan.timeline, plan.totals.dryerRuns, plan.totals.minutes]).toEqual([[], [], 0, 0]);
  expect(plan.totals.cost).toBeCloseTo(55.8, 12);
});

test("a batch of undyed parts alone rests on no assumption, and lacks no price but that of its blanks", () => {
  const { blank: _, ...part } = hook;
  const handling = { ...batch.handling, dragOutAssumed: true, assumed: ["load", "setUp"] as const };
  const alone = { ...batch, handling, rates: {}, dryers: [], baths: [] };
  const plan = planned({ ...alone, orders: [{ ...bare, index: 0, part }] });
  expect([plan.assumptions, plan.restsOnAssumed]).toEqual([[], []]);
  expect(plan.notCounted).toEqual(['the undyed part "hook"']);
  expect(planned({ ...alone, orders: [{ ...bare, index: 0 }] }).notCounted).toEqual([]);
  expect(planResults(plan)).toMatchObject({ shortestDipSeconds: null, longestDipSeconds: null });
});
