import { expect, test } from "vitest";
import { uncertainInputs } from "../../src/batch-file/to-batch/uncertain-inputs.js";
import { blankCost } from "../../src/core/cost/rate/blank.js";
import { planBatch } from "../../src/core/plan/plan.js";
import { readGood } from "./read.js";

const read = () => readGood("built-blanks.yaml");

test("a blank that is built up costs powder, machine and finishing, and can be used beside one with a price", async () => {
  const { batch } = await read();
  const [cleat, ring] = batch!.parts;
  const chalk = blankCost({
    massG: 6.4,
    powderPerKg: 70,
    refresh: 0.4,
    packing: 0.1,
    buildHours: 15,
    machinePerHour: 9.5,
    partsPerBuild: 180,
    finishing: 0.15,
  }).total;
  expect(chalk).toBeCloseTo((6.4 * 4 * 70) / 1000 + (15 * 9.5) / 180 + 0.15, 12);
  expect(cleat!.blank).toEqual(
    new Map([
      ["chalk", chalk],
      ["slate", 1.62],
    ]),
  );
  // Less than its own mass of fresh powder a part cannot take: refresh/packing is 0.5 here.
  expect(ring!.blank).toBeCloseTo((10 * 60) / 1000 + (10 * 9) / 100, 12);
});

test("what a built blank costs more on one base than on the other is said for equal profit", async () => {
  const { batch } = await read();
  const plan = planBatch({ ...batch!, pricing: { overhead: 0, fees: 0, margin: 0.4, tax: 0 } });
  if (!plan.ok) throw new Error("no plan");
  const [first] = plan.value.orders;
  const [own, other] = ["chalk", "slate"].map(
    (base) => (batch!.parts[0]!.blank as Map<string, number>).get(base)!,
  ) as [number, number];
  expect(first!.otherBases).toEqual([
    {
      base: "slate",
      costPerPart: expect.closeTo(first!.costPerPart! + ((other - own) * 95) / 90, 9),
      surcharge: expect.closeTo(((own - other) * 95) / 90, 9),
    },
  ]);
});

test("rework starts fewer parts, and dips those that missed their shade again", async () => {
  const { batch } = await read();
  const plan = planBatch(batch!);
  if (!plan.ok) throw new Error("no plan");
  const dips = (order: number): number =>
    plan.value.baths
      .flatMap(({ loads }) => loads)
      .filter((load) => load.order === order)
      .reduce((sum, load) => sum + load.parts, 0);
  // 90/(0.9 + 0.1 x 0.5) = 94.7; of 95 parts 9.5 miss, of which 4.75 are saved.
  expect([plan.value.orders[0]!.started, dips(1)]).toEqual([95, 95 + 5]);
  expect([plan.value.orders[1]!.started, dips(2)]).toEqual([48, 48 + 3]);
  // Those are dipped after the others, in loads of their own: each costs a cycle.
  const all = plan.value.baths.flatMap(({ loads }) => loads);
  const again = all.filter((load) => load.again);
  expect(again.map(({ order, parts }) => [order, parts])).toEqual([
    [1, 5],
    [2, 3],
  ]);
  for (const order of [1, 2]) {
    const own = all.filter((load) => load.order === order);
    expect(own.map((load) => load.again === true)).toEqual([...Array(own.length - 1).fill(false), true]);
  }
  expect(plan.value.orders[0]!.lines!.blank).toBeCloseTo(
    95 * (batch!.parts[0]!.blank as Map<string, number>).get("chalk")!,
    9,
  );
  expect(plan.value.assumptions.map(({ code }) => code)).toContain("second-dip");
  const { rework: _, ...without } = batch!;
  const plain = planBatch(without);
  if (!plain.ok) throw new Error("no plan");
  expect(plain.value.orders[0]!.started).toBe(100);
  expect(plain.value.assumptions.map(({ code }) => code)).not.toContain("second-dip");
});

test("± of a built blank's powder is an uncertain input, what no order uses is none", async () => {
  const { spec } = await read();
  const keysOf = (of: NonNullable<typeof spec>) =>
    uncertainInputs(of).flatMap(({ path }) => (path[0] === "handling" ? [] : [path.join(".")]));
  expect(keysOf(spec!)).toEqual([
    "dyes.lagoon.activationEnergy",
    "parts.cleat.blank.chalk.powder",
    "dyes.lagoon.strengthExponent",
  ]);
  const unused = { ...spec!, orders: spec!.orders.filter(({ part }) => part !== "cleat") };
  expect(keysOf(unused)).toEqual(["dyes.lagoon.activationEnergy", "dyes.lagoon.strengthExponent"]);
});
