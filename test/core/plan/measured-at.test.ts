import fc from "fast-check";
import { expect, test } from "vitest";
import type { Batch, Dye } from "../../../src/core/model/batch.js";
import { planBatch } from "../../../src/core/plan/plan.js";
import type { Plan } from "../../../src/core/plan/plan-model.js";
import { rateFactor } from "../../../src/core/uptake/law/arrhenius.js";
import { batches } from "./arbitrary.js";
import { bath, hook, isothermal, light, order, batch as sample } from "./sample.js";

const batch: Batch = { ...sample, orders: [order(0, hook, light, 97)] };

/** A batch with another dye in the place of each of its own. */
function withDyes(input: Batch, change: (dye: Dye) => Dye): Batch {
  const changed = new Map(input.dyes.map((dye) => [dye, change(dye)]));
  return {
    ...input,
    dyes: [...changed.values()],
    baths: input.baths.map((one) => ({ ...one, dye: changed.get(one.dye)! })),
    orders: input.orders.map((one) => ({
      ...one,
      shade: { ...one.shade!, dye: changed.get(one.shade!.dye)! },
    })),
  };
}
const planOf = (input: Batch): Plan => {
  const plan = planBatch(isothermal(input));
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  return plan.value;
};
const half: Partial<Dye> = { dilution: { kind: "liquid", fraction: 0.05 } };
const measured: Dye["measuredAt"] = { dilution: { kind: "liquid", fraction: 0.1 }, celsius: 80 };
const dips = (plan: Plan): number[] => plan.baths[0]!.loads.map(({ dipSeconds }) => dipSeconds);

test("a dye measured in the bath that it is made up as plans as if that were not said", () => {
  fc.assert(
    fc.property(batches, (input) => {
      const said = withDyes(input, (dye) => ({
        ...dye,
        measuredAt: { dilution: dye.dilution, celsius: dye.celsius },
      }));
      expect(planBatch(said)).toEqual(planBatch(input));
    }),
    { numRuns: 30 },
  );
});

test("a fresh bath of half the dilution dips as long as a kept one of half the strength", () => {
  const thin = planOf(withDyes(batch, (dye) => ({ ...dye, ...half, measuredAt: measured })));
  const kept = planOf({
    ...batch,
    baths: [
      { ...bath, start: { kind: "kept", volumeL: 6, strength: 0.5, ageDays: 0, areaDm2: 0 }, topUp: "none" },
    ],
  });
  expect(thin.baths[0]!.loads[0]!.dipSeconds).toBeCloseTo(kept.baths[0]!.loads[0]!.dipSeconds, 9);
  expect(thin.baths[0]!.loads[0]!.strengthBefore).toBe(1);
  expect(dips(thin)[0]!).toBeGreaterThan(2 * dips(planOf(batch))[0]!);
});

test("a cooler bath than the dye was measured at takes longer by the ratio of the rates", () => {
  const cool = planOf(withDyes(batch, (dye) => ({ ...dye, celsius: 70, measuredAt: { celsius: 80 } })));
  const slower = rateFactor({ referenceCelsius: 80, celsius: 70, activationEnergyJPerMol: 75_000 });
  expect(cool.baths[0]!.loads[0]!.dipSeconds * slower).toBeCloseTo(dips(planOf(batch))[0]!, 3);
  expect(cool.baths[0]!.celsius).toBe(70);
});

test("without saying so, swatches and rate belong to whatever the bath is made up as", () => {
  const thin = planOf(withDyes(batch, (dye) => ({ ...dye, ...half })));
  expect(dips(thin)[0]!).toBeCloseTo(dips(planOf(batch))[0]!, 1);
});

test("a bath made up thin is worn only where its dips take twice as long as in itself when fresh", () => {
  const { warnings } = planOf(withDyes(batch, (dye) => ({ ...dye, ...half, measuredAt: measured })));
  expect(warnings.map(({ code }) => code)).not.toContain("bath-nearly-spent");
});
