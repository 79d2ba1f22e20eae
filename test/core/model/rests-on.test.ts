import fc from "fast-check";
import { expect, test } from "vitest";
import type { Batch, Dye } from "../../../src/core/model/batch.js";
import { planBatch } from "../../../src/core/plan/plan.js";
import type { Plan } from "../../../src/core/plan/plan-model.js";
import { planReport } from "../../../src/report/plan/report.js";
import { batches } from "../plan/arbitrary.js";
import { figures, passedForKnown } from "../plan/figures.js";
import { batch as sample } from "../plan/sample.js";

const planOf = (batch: Batch): Plan | undefined => {
  const plan = planBatch(batch);
  return plan.ok ? plan.value : undefined;
};

/** A batch whose first used dye has this uptake, assumed, and all that hold the dye with it. */
function withUptake(batch: Batch, uptakePerDm2: number): Batch {
  const name = batch.orders[0]!.shade!.dye.name;
  const change = (dye: Dye): Dye => (dye.name === name ? { ...dye, uptakePerDm2, uptakeAssumed: true } : dye);
  return { ...batch, ...exchanged(batch, change) };
}

/** Orders and baths must hold one and the same dye. */
function exchanged(batch: Batch, change: (dye: Dye) => Dye) {
  const changed = new Map(batch.dyes.map((dye) => [dye, change(dye)]));
  const of = (dye: Dye) => changed.get(dye)!;
  const shades = new Map(batch.shades.map((shade) => [shade, { ...shade, dye: of(shade.dye) }]));
  return {
    dyes: [...changed.values()],
    baths: batch.baths.map((bath) => ({ ...bath, dye: of(bath.dye) })),
    shades: [...shades.values()],
    orders: batch.orders.map((order) => ({
      ...order,
      shade: shades.get(order.shade!) ?? { ...order.shade!, dye: of(order.shade!.dye) },
    })),
  };
}

const withDragOut = (batch: Batch, dragOutMlPerDm2: number): Batch => ({
  ...batch,
  handling: { ...batch.handling, dragOutMlPerDm2, dragOutAssumed: true },
});

/**
 * A bath of another dye moves through the clock alone: while the operator is elsewhere a little evaporates, more where a
 * dip there takes longer. That is no mark worth: it stays under 2 %.
 */
function movesByClock(a: Plan, b: Plan, input: Batch, path: string): boolean {
  const at = /^\.baths\.(\d+)\./.exec(path);
  if (at === null || a.baths[Number(at[1])]!.dye === input.orders[0]!.shade!.dye.name) return false;
  const [before, after] = [figures(a).get(path)?.value, figures(b).get(path)?.value];
  return before !== undefined && after !== undefined && Math.abs(after - before) <= 0.02 * Math.abs(before);
}

for (const what of ["uptake", "dragOut"] as const)
  test(`every number of a plan that moves with an assumed ${what} is marked as resting on it`, () => {
    let movedAtAll = 0;
    fc.assert(
      fc.property(batches, (input) => {
        const vary = what === "uptake" ? withUptake : withDragOut;
        const [a, b] = [planOf(vary(input, 0.03)), planOf(vary(input, 0.05))];
        if (a === undefined || b === undefined) return;
        const result = passedForKnown(a, b, what);
        movedAtAll += result.moved;
        expect(result.unmarked.filter((path) => !movesByClock(a, b, input, path))).toEqual([]);
      }),
      { numRuns: 60, seed: 16, endOnFailure: true },
    );
    expect(movedAtAll).toBeGreaterThan(1000);
  });

test("a plan marks nothing where uptake and drag-out are given, in text and table neither", () => {
  const plan = planOf(sample)!;
  expect(new Set([...figures(plan).values()].flatMap(({ rests }) => rests))).toEqual(new Set());
  const { blocks, rows } = planReport(plan);
  expect(JSON.stringify(blocks)).not.toContain("†");
  const at = rows.columns.findIndex(({ key }) => key === "rests_on_assumed");
  expect(new Set(rows.rows.slice(0, plan.totals.loads).map((row) => row[at]))).toEqual(new Set([""]));
});

test("a run sheet marks its cost where an assumption carries a twentieth of it, and says how much in any case", () => {
  const sheet = (price: number): string => {
    const dear = withUptake(sample, 3);
    const change = (one: Dye): Dye => ({ ...one, price });
    return JSON.stringify(planReport(planOf({ ...dear, ...exchanged(dear, change) })!).blocks);
  };
  expect(sheet(460)).toContain("Costs in EUR†");
  expect(sheet(460)).toMatch(/\(\d+ % of the cost\)/);
  expect(sheet(0.1)).not.toContain("†");
  expect(sheet(0.1)).toContain("(under 1 % of the cost)");
});
