import { describe, expect, test } from "vitest";
import { hasMoney, notCounted } from "../../../src/core/cost/missing.js";
import type { Batch } from "../../../src/core/model/batch.js";
import { batch, bath, hook, light, order } from "../plan/sample.js";

const { price: _, ...dye } = batch.dyes[0]!;
const { equipment: __, heaterW: ___, ...tank } = batch.tanks[0]!;
const { blank: ____, ...part } = hook;
const none = { perBath: 0, perLoad: 0, perPart: 0 };

/** The sample without any price. */
const bare: Batch = {
  ...batch,
  rates: {},
  dyes: [dye],
  tanks: [tank],
  parts: [part],
  dryers: [],
  consumables: none,
  baths: [{ ...bath, dye, tank }],
  orders: [order(0, part, { ...light, dye }, 10)],
};

describe("hasMoney", () => {
  test("is false without any price, and where consumables are free", () => {
    expect(hasMoney(bare)).toBe(false);
  });

  test.each(["perBath", "perLoad", "perPart"] as const)("is true with the least consumables %s", (key) => {
    expect(hasMoney({ ...bare, consumables: { ...none, [key]: 0.0001 } })).toBe(true);
  });

  test.each([
    ["a blank", { parts: [{ ...part, blank: 0 }] }],
    ["a dye", { dyes: [{ ...dye, price: 0 }] }],
    ["water", { rates: { waterPerM3: 0 } }],
    ["electricity", { rates: { electricityPerKwh: 0 } }],
    ["labour", { rates: { labourPerHour: 0 } }],
    ["disposal", { rates: { disposalPerL: 0 } }],
    ["a tank", { tanks: [{ ...tank, equipment: { price: 0, lifeHours: 1 } }] }],
    ["a dryer", { dryers: [{ ...batch.dryers[0]!, equipment: { price: 0, lifeHours: 1 } }] }],
  ] as const)("is true where %s has a price, be it 0", (_what, given) => {
    expect(hasMoney({ ...bare, ...given })).toBe(true);
  });
});

test("notCounted names all that has no price, in the order of the cost lines", () => {
  expect(notCounted(batch)).toEqual([]);
  expect(notCounted(bare)).toEqual([
    `the undyed part "${part.name}"`,
    `dye "${dye.name}"`,
    "water",
    "electricity",
    `heating up tank "${tank.name}" (no heater power)`,
    "labour",
    `wear of tank "${tank.name}"`,
    "drying (no dryer)",
    "disposal of spent liquor",
  ]);
  const { equipment: _wear, ...dryer } = batch.dryers[0]!;
  expect(notCounted({ ...batch, dryers: [dryer] })).toEqual([`wear of dryer "${dryer.name}"`]);
});
