import { expect, test } from "vitest";
import type { Batch } from "../../../../src/core/model/batch.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { dipFaults } from "../../../../src/core/plan/warnings/dip-faults.js";
import { batch, bath, dye, handling, hook, isothermal, light, order } from "../sample.js";

/** The warnings of one load of hooks, dipped for a time in a bath whose strength hardly changes. */
function warnings(
  seconds: number,
  change: Partial<Batch["handling"]> = {},
  dyeChange: Partial<typeof dye> = {},
) {
  const steady = { ...dye, uptakePerDm2: 1e-9, ...dyeChange };
  const shade = { name: "one", dye: steady, target: { kind: "time" as const, seconds }, tolerance: 1.5 };
  const plan = planBatch(
    isothermal({
      ...batch,
      baths: [{ ...bath, dye: steady }],
      handling: { ...handling, dragOutMlPerDm2: 1e-9, ...change },
      orders: [order(0, hook, shade, 4)],
    }),
  );
  return plan.faults.filter(({ severity }) => severity === "warning");
}
const codes = (...of: Parameters<typeof warnings>): string[] => warnings(...of).map(({ code }) => code);
const help = (...of: Parameters<typeof warnings>): string =>
  warnings(...of).find(({ code }) => code === "dip-too-short")!.help!;

test("a dip under the shortest is too short, one over the longest too long", () => {
  expect([14.99, 15.01].map((seconds) => codes(seconds).includes("dip-too-short"))).toEqual([true, false]);
  expect([299.9, 300.1].map((seconds) => codes(seconds).includes("dip-too-long"))).toEqual([false, true]);
});

test("a quick dip is never slowed by cooler work", () => {
  for (const seconds of [1, 5, 14]) expect(help(seconds)).not.toMatch(/°C|cooler/);
});

test("a quick dip is slowed by a dilution down to a fiftieth", () => {
  const quick = (strength: number): string => help(60 * strength ** 2, {}, { law: "parabolic" });
  expect(quick(0.0202)).toContain("dilute to");
  expect(quick(0.0198)).not.toContain("dilute to");
});

test("a load is large from a tenth of the dye in the bath on", () => {
  const takes = (share: number): string[] => {
    const one = order(0, hook, light, 1);
    const worked = (uptakePerDm2: number) => {
      const dyed = { ...dye, uptakePerDm2 };
      const orders = [{ ...one, shade: { ...one.shade!, dye: dyed } }];
      return planBatch({ ...batch, yield: 1, baths: [{ ...bath, dye: dyed }], orders });
    };
    const plan = worked(1e-6);
    if (!plan.ok) throw new Error(plan.faults[0]!.message);
    const { dyeBalance, loads } = plan.value.baths[0]!;
    const startMl = "startMl" in dyeBalance ? dyeBalance.startMl : 0;
    return worked((share * startMl) / hook.areaDm2 / loads[0]!.depth).faults.map(({ code }) => code);
  };
  expect([0.099, 0.101].map((share) => takes(share).includes("large-load"))).toEqual([false, true]);
});

/** The faults of one load whose times are made up. */
function faultsOf(load: { seconds: number; width?: number; freshSeconds?: number }) {
  const { seconds, width = 60, freshSeconds = seconds } = load;
  const model = {
    law: "first-order" as const,
    ratePerSecond: 0.01,
    referenceSeconds: 180,
    referenceCelsius: 80,
    activationEnergyJPerMol: 75_000,
  };
  const one = {
    plan: { order: order(0, hook, light, 1), depth: 0.4, freshSeconds },
    result: { dipSeconds: seconds, strengthDuring: 1 },
    window: [seconds, seconds + width],
    freshSeconds,
  };
  return dipFaults(bath, handling, model, [one as never]);
}

test("a bath is nearly spent when its dip takes over twice the time in a fresh one", () => {
  const spent = (seconds: number) => faultsOf({ seconds, freshSeconds: 100 }).map(({ code }) => code);
  expect(spent(199)).toEqual([]);
  expect(spent(201)).toEqual(["bath-nearly-spent"]);
});

test("a window under twice the timing is too narrow, and only dips under a minute are slowed", () => {
  expect(faultsOf({ seconds: 50, width: 4.01 })).toEqual([]);
  const [quick] = faultsOf({ seconds: 59.9, width: 3.99 });
  expect(quick).toMatchObject({ code: "window-too-narrow" });
  expect(quick!.help).toContain("for a dip of");
  expect(faultsOf({ seconds: 60.1, width: 3.99 })[0]!.help).toBe(
    "allow a wider tolerance, or time the dip better",
  );
});
