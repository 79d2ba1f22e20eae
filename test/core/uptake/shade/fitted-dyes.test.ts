import { expect, test } from "vitest";
import { madeOnce } from "../../../../src/core/made-once.js";
import type { Batch, Dye } from "../../../../src/core/model/batch.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { SharedWork } from "../../../../src/core/plan/run/shared-work.js";
import { batch } from "../../plan/sample.js";

const { ratePerSecond: _, ...unrated } = batch.dyes[0]!;
const swatched: Dye = {
  ...unrated,
  law: "auto",
  base: { name: "white", lab: [92.1, -0.6, -2.3] },
  swatches: (
    [
      [15, 80.2, 21.7, 9.8],
      [30, 73.5, 33, 15.9],
      [60, 65.9, 44.6, 23],
      [180, 55.2, 55.9, 31.8],
    ] as const
  ).map(([seconds, ...lab]) => ({ seconds, colour: { kind: "lab", lab } })),
};

const dyedWith = (dye: Dye): Batch => ({
  ...batch,
  dyes: [dye],
  baths: batch.baths.map((bath) => ({ ...bath, dye })),
  orders: batch.orders.map((order) => ({ ...order, shade: { ...order.shade!, dye } })),
});

test("a plan that shares its work with others is the plan worked alone, also for a dye that changes in what is not shared", () => {
  const shared = new SharedWork();
  const variants: Dye[] = [
    swatched,
    { ...swatched, celsius: 76, saturation: 0.8, uptakePerDm2: 0.05 },
    { ...swatched, activationEnergyJPerMol: 50_000, price: 12 },
    { ...swatched, ratePerSecond: 0.01 },
    // Of another bath in the first, of the dye's own in the second.
    { ...swatched, swatches: [...swatched.swatches, { ...swatched.swatches[1]!, seconds: 45, celsius: 70 }] },
    {
      ...swatched,
      celsius: 70,
      swatches: [...swatched.swatches, { ...swatched.swatches[1]!, seconds: 45, celsius: 70 }],
    },
    { ...swatched, law: "second-order" },
    { ...swatched, swatches: swatched.swatches.slice(1) },
    { ...swatched, base: { name: "grey", lab: [70, 0, 0] } },
    swatched,
  ];
  const plans = variants.map((dye) => planBatch(dyedWith(dye)));
  expect(plans.every((plan) => plan.ok)).toBe(true);
  expect(new Set(plans.map((plan) => JSON.stringify(plan))).size).toBe(variants.length - 1);
  variants.forEach((dye, i) => {
    expect(planBatch(dyedWith(dye), shared)).toEqual(plans[i]);
  });
});

test("a fault of a dye comes again with every plan", () => {
  const shared = new SharedWork();
  const odd: Dye = { ...swatched, swatches: [{ seconds: 30, colour: { kind: "lab", lab: [50, 200, 0] } }] };
  const plain = planBatch(dyedWith(odd));
  expect(plain.ok).toBe(false);
  expect([planBatch(dyedWith(odd), shared), planBatch(dyedWith(odd), shared)]).toEqual([plain, plain]);
});

test("madeOnce makes the value of a key once and drops the oldest beyond the most that it keeps", () => {
  const asked: number[] = [];
  const squares = new Map<number, number>();
  const square = (x: number): number =>
    madeOnce(squares, x, 2, () => {
      asked.push(x);
      return x * x;
    });
  expect([3, 3, 4, 3, 5, 4, 3].map(square)).toEqual([9, 9, 16, 9, 25, 16, 9]);
  expect(asked).toEqual([3, 4, 5, 3]);
});

test("a colour is sought up to each batch's own longest dip, also where another batch sought it before", () => {
  const within = (longestSeconds: number): Batch => {
    const one = dyedWith(swatched);
    const target = { kind: "colour", colour: { kind: "lab", lab: [48, 58, 40] } } as const;
    return {
      ...one,
      handling: { ...one.handling, longestSeconds },
      orders: one.orders.map((order) => ({ ...order, shade: { ...order.shade!, target } })),
    };
  };
  const batches = [300, 900, 300].map(within);
  const alone = batches.map((one) => planBatch(one));
  const dips = alone.map((plan) => plan.ok && plan.value.baths[0]!.loads[0]!.dipSeconds);
  expect(dips[1]).toBeGreaterThan(Number(dips[0]) + 30);
  const shared = new SharedWork();
  expect(batches.map((one) => planBatch(one, shared))).toEqual(alone);
});
