import { expect, test } from "vitest";
import type { Batch } from "../../../../src/core/model/batch.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import { batch, bath, deep, dye, order, tray } from "../sample.js";

/** One load of trays in a fresh bath; κ high enough for it to take this share of the dye. */
function oneLoad(share: number, more: Partial<Batch["dyes"][number]> = {}) {
  const fed = { ...dye, ...more };
  const plan = (uptakePerDm2: number) => {
    const hungry = { ...fed, uptakePerDm2 };
    return planBatch({
      ...batch,
      yield: 1,
      dyes: [hungry],
      baths: [{ ...bath, dye: hungry, topUp: "none" as const }],
      orders: [order(0, tray, { ...deep, dye: hungry }, 9)],
    });
  };
  const known = plan(0);
  if (!known.ok) throw new Error("no plan");
  const [load] = known.value.baths[0]!.loads;
  const start = known.value.baths[0]!.dyeBalance as { startMl: number };
  const kappa = (share * start.startMl) / (load!.areaDm2 * load!.depth);
  const result = plan(kappa);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  const [first] = result.value.baths[0]!.loads;
  return {
    load: first!,
    warning: result.value.warnings.find(({ code }) => code === "finite-bath"),
  };
}

/** dD/dt = k (a s - D) with s falling from 1 by `share` as D rises to its end, in small steps; a the plateau. */
function stepped(depth: number, share: number, rate: number, plateau: number): number {
  const steps = 200_000;
  let seconds = 0;
  for (let i = 0; i < steps; i++) {
    const d = ((i + 0.5) / steps) * depth;
    seconds += depth / steps / (rate * (plateau * (1 - (share * d) / depth) - d));
  }
  return seconds;
}

test("a load that takes 8 % of the dye is warned of with its exact time, that of the rate law in small steps", () => {
  const { load, warning } = oneLoad(0.08);
  const [, exact, planned] = /takes ([\d.]+) s, not the plan's ([\d.]+) s/.exec(warning!.message)!;
  const plateau = 1 / (1 - Math.exp(-0.012 * 300));
  const truth = stepped(load.depth, 0.08, 0.012, plateau);
  expect(Number(planned)).toBeCloseTo(load.dipSeconds, 1);
  expect(Number(exact)).toBeCloseTo(truth, 1);
  expect(truth / load.dipSeconds - 1).toBeGreaterThan(0.005);
});

test("a first-order dip that takes 0.8 % of the dye is right to 0.5 % at the mean strength, and not warned of", () => {
  const { load, warning } = oneLoad(0.008);
  const truth = stepped(load.depth, 0.008, 0.012, 1 / (1 - Math.exp(-0.012 * 300)));
  expect(Math.abs(load.dipSeconds / truth - 1)).toBeLessThan(0.005);
  expect(warning).toBeUndefined();
});

test("the exact time is that of the bath as it is made up, thinner than the dye was measured in", () => {
  const thin = oneLoad(0.08, {
    dilution: { kind: "liquid", fraction: 0.09 },
    measuredAt: { dilution: { kind: "liquid", fraction: 0.1 } },
  });
  const [, exact] = /takes ([\d.]+) s/.exec(thin.warning!.message)!;
  const plateau = 0.9 / (1 - Math.exp(-0.012 * 300));
  expect(Number(exact)).toBeCloseTo(stepped(thin.load.depth, 0.08, 0.012, plateau), 1);
});
