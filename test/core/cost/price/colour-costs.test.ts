import fc from "fast-check";
import { expect, test } from "vitest";
import { otherBases } from "../../../../src/core/cost/price/other-bases.js";
import type { Base } from "../../../../src/core/model/batch.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { batches } from "../../plan/arbitrary.js";
import { batch, hook, light, order } from "../../plan/sample.js";

test("fixed and variable costs of all colours of dumped fresh baths are what the batch costs", () => {
  let done = 0;
  fc.assert(
    fc.property(batches, (drawn) => {
      const input = { ...drawn, baths: drawn.baths.map((bath) => ({ ...bath, after: "dump" as const })) };
      const plan = planBatch(input);
      // A bath that no order uses is left out of the plan and of its colours alike.
      if (!plan.ok) return;
      done++;
      const paid = plan.value.colours.reduce((sum, { fixed, variablePerPart, parts }) => {
        const { makeUp, setUp, heating, disposal } = fixed;
        return sum + makeUp + setUp + heating + disposal + variablePerPart * parts;
      }, 0);
      expect(Math.abs(paid - plan.value.totals.cost!)).toBeLessThanOrEqual(1e-9 * paid);
    }),
    { numRuns: 60, seed: 11 },
  );
  expect(done).toBeGreaterThan(30);
});

test("a colour without pricing has no price and no break-even, and a batch without money no colours", () => {
  const plan = planBatch(batch);
  expect(
    plan.ok && plan.value.colours.map(({ netPrice, breakEvenParts }) => [netPrice, breakEvenParts]),
  ).toEqual([[null, null]]);
  const { price: _, ...dye } = batch.dyes[0]!;
  const { equipment: __, ...tank } = batch.tanks[0]!;
  const { blank: ___, ...part } = hook;
  const bare = planBatch({
    ...batch,
    rates: {},
    dyes: [dye],
    tanks: [tank],
    parts: [part],
    dryers: [],
    consumables: { perBath: 0, perLoad: 0, perPart: 0 },
    baths: [{ ...batch.baths[0]!, dye, tank }],
    orders: [order(0, part, { ...light, dye }, 10)],
  });
  expect(bare.ok && bare.value.colours).toEqual([]);
});

const blank = new Map([
  ["white", 1.84],
  ["grey", 1.62],
]);
const white: Base = { name: "white" };
const asked = { ...order(0, { ...hook, blank }, light, 97), base: white };
const pricing = { overhead: 0.1, fees: 0.04, margin: 0.45, tax: 0.2 };

// A good part carries 100/97 blanks: 0.22 × 100/97 = 0.226804 less; 0.226804 × 1.1/0.96 = 0.259880.
test("a part on another base costs the difference of the blanks over the yield less, and may be sold for that with overhead and fees", () => {
  const [grey, ...more] = otherBases(asked, { costPerPart: 3, started: 100, quantity: 97 }, pricing);
  expect(more).toEqual([]);
  expect(grey!.base).toBe("grey");
  expect(grey!.costPerPart).toBeCloseTo(3 - 0.226804, 6);
  expect(grey!.surcharge).toBeCloseTo(0.25988, 6);
});

test("no other base is known for a blank of one price, an order without base or cost, or a base without a price", () => {
  const costed = { costPerPart: 3, started: 100, quantity: 97 };
  expect(otherBases({ ...asked, part: hook }, costed, pricing)).toEqual([]);
  expect(otherBases(order(0, { ...hook, blank }, light, 97), costed, pricing)).toEqual([]);
  expect(otherBases(asked, { ...costed, costPerPart: null }, pricing)).toEqual([]);
  expect(otherBases({ ...asked, base: { name: "black" } }, costed, pricing)).toEqual([]);
  expect(otherBases(asked, costed, undefined)[0]!.surcharge).toBeNull();
});
