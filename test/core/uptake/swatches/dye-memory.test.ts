import { expect, test } from "vitest";
import { remember } from "../../../../src/core/maths/remember.js";
import type { Batch, Dye } from "../../../../src/core/model/batch.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { dyeMemory } from "../../../../src/core/uptake/swatches/dye-memory.js";
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
  orders: batch.orders.map((order) => ({ ...order, shade: { ...order.shade, dye } })),
});

test("a plan with a memory is the plan without, also for a dye that changes in what the memory does not keep", () => {
  const memory = dyeMemory();
  const variants: Dye[] = [
    swatched,
    { ...swatched, celsius: 76, saturation: 0.8, uptakePerDm2: 0.05 },
    { ...swatched, activationEnergyJPerMol: 50_000, price: 12 },
    { ...swatched, ratePerSecond: 0.01 },
    { ...swatched, law: "second-order" },
    { ...swatched, swatches: swatched.swatches.slice(1) },
    { ...swatched, base: { name: "grey", lab: [70, 0, 0] } },
    swatched,
  ];
  const plans = variants.map((dye) => planBatch(dyedWith(dye)));
  expect(plans.every((plan) => plan.ok)).toBe(true);
  expect(new Set(plans.map((plan) => JSON.stringify(plan))).size).toBe(variants.length - 1);
  variants.forEach((dye, i) => {
    expect(planBatch(dyedWith(dye), { modelOf: memory })).toEqual(plans[i]);
  });
});

test("a fault is remembered as it was", () => {
  const memory = dyeMemory();
  const odd: Dye = { ...swatched, swatches: [{ seconds: 30, colour: { kind: "lab", lab: [50, 200, 0] } }] };
  const plain = planBatch(dyedWith(odd));
  expect(plain.ok).toBe(false);
  expect([
    planBatch(dyedWith(odd), { modelOf: memory }),
    planBatch(dyedWith(odd), { modelOf: memory }),
  ]).toEqual([plain, plain]);
});

test("remember computes once a key and forgets the oldest beyond the most it keeps", () => {
  const asked: number[] = [];
  const square = remember(
    (x: number) => {
      asked.push(x);
      return x * x;
    },
    (x) => String(x),
    2,
  );
  expect([3, 3, 4, 3, 5, 4, 3].map(square)).toEqual([9, 9, 16, 9, 25, 16, 9]);
  expect(asked).toEqual([3, 4, 5, 3]);
});
