import fc from "fast-check";
import { expect, test } from "vitest";
import { ciede2000 } from "../../../../src/core/colour/difference/ciede2000.js";
import { costBatch } from "../../../../src/core/cost/history/snapshot.js";
import type { Dye, Lab } from "../../../../src/core/model/batch.js";
import { planBatch } from "../../../../src/core/plan/plan.js";
import type { Plan } from "../../../../src/core/plan/plan-model.js";
import { SharedWork } from "../../../../src/core/plan/run/shared-work.js";
import { workBatch } from "../../../../src/core/plan/run/work-batch.js";
import { isothermal } from "../sample.js";
import { batchOf, lagoon, mixable, mixOf, rose, shadeOf, straw } from "./mixed-sample.js";

const shared = new SharedWork();
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

function planned(batch: ReturnType<typeof batchOf>): Plan {
  const plan = planBatch(batch, shared);
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  return plan.value;
}

const with_ = (dye: Dye, uptakePerDm2: number): Dye => ({ ...dye, uptakePerDm2 });

const plans = fc
  .record({
    uptakes: fc.tuple(real(0.01, 0.6), real(0.01, 0.6), real(0.01, 0.6)),
    strengths: fc.tuple(real(0.1, 1.2), real(0.1, 1.2), real(0.05, 0.6)),
    count: fc.integer({ min: 2, max: 3 }),
    topUp: fc.constantFrom("none" as const, "level" as const, "strength" as const),
    seconds: fc.tuple(fc.integer({ min: 20, max: 60 }), fc.integer({ min: 61, max: 150 })),
    kept: fc.option(fc.tuple(real(4, 6), real(0.7, 1.2)), { nil: undefined }),
  })
  .map(({ uptakes, strengths, count, topUp, seconds, kept }) => {
    const dyes = [straw, rose, lagoon].slice(0, count).map((dye, i) => with_(dye, uptakes[i]!));
    const mix = mixOf(dyes.map((dye, i) => [dye, strengths[i]!] as const));
    const start =
      kept === undefined
        ? ({ kind: "fresh" } as const)
        : ({ kind: "kept", volumeL: kept[0], strength: kept[1], ageDays: 3, areaDm2: 40 } as const);
    return batchOf(
      mix,
      seconds.map((one) => shadeOf(mix, one)),
      { topUp, start, after: "dump" },
    );
  });

test("each dye of a mix is conserved to 1e-9: start + added = taken up + dragged out + left", () => {
  fc.assert(
    fc.property(plans, (batch) => {
      const worked = workBatch(batch, "kept", shared);
      if (!worked.ok) return;
      const [run] = worked.value.runs;
      const plan = planned(batch).baths[0]!;
      const sums = { startMl: 0, addedMl: 0, takenUpMl: 0, draggedOutMl: 0, leftMl: 0 };
      for (const one of plan.dyeBalance.mix!) {
        const each = one as unknown as typeof sums;
        const put = each.startMl + each.addedMl;
        expect(Math.abs(put - each.takenUpMl - each.draggedOutMl - each.leftMl)).toBeLessThan(1e-9 * put);
        for (const key of Object.keys(sums) as (keyof typeof sums)[]) sums[key] += each[key];
      }
      for (const key of Object.keys(sums) as (keyof typeof sums)[])
        expect(Math.abs(sums[key] - (plan.dyeBalance as unknown as typeof sums)[key])).toBeLessThan(
          1e-9 * sums.startMl,
        );
      for (const { result } of run!.loads)
        expect(result.takenUpEach.reduce((sum, one) => sum + one, 0)).toBeCloseTo(result.takenUp, 9);
    }),
    { seed: 11, numRuns: 15, endOnFailure: true },
  );
});

/** The colour of depths, from K/S, reflectance and the weights of the curve, in this file's own words. */
function labOf(dyes: ReturnType<typeof mixable>, depths: readonly number[]): Lab {
  const { weights } = dyes[0]!.model.chosen.curve;
  const bases = dyes.map(({ baseKs }) => baseKs);
  const xyz = [0, 0, 0];
  const added = depths.map((depth, i) => {
    const { absorption } = dyes[i]!.model.chosen.curve;
    return (depth * absorption.reduce((sum, one) => sum + one, 0)) / absorption.length;
  });
  for (let w = 0; w < bases[0]!.length; w++) {
    let ks = bases.reduce((sum, one) => sum + one[w]!, 0) / bases.length;
    depths.forEach((depth, i) => {
      ks += depth * dyes[i]!.model.chosen.curve.absorption[w]!;
    });
    const reflectance = 1 + ks - Math.sqrt(ks * ks + 2 * ks);
    [weights.x, weights.y, weights.z].forEach((one, axis) => {
      xyz[axis]! += one[w]! * reflectance;
    });
  }
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const [x, y, z] = xyz.map((one, axis) => f(one / weights.white[axis]!)) as [number, number, number];
  const lab: [number, number, number] = [116 * y - 16, 500 * (x - y), 200 * (y - z)];
  const all = added.reduce((sum, one) => sum + one, 0);
  dyes.forEach(({ model }, i) => {
    const { curve } = model.chosen;
    const { uptake } = model;
    const full = -Math.expm1(-uptake.ratePerSecond * uptake.referenceSeconds);
    const seconds =
      uptake.law === "first-order" ? -Math.log1p(-depths[i]! * full) / uptake.ratePerSecond : Number.NaN;
    if (!Number.isFinite(seconds)) throw new Error("this check knows first-order dyes only");
    curve.residual(seconds).forEach((missed, axis) => {
      lab[axis]! += (added[i]! / all) ** 2 * missed;
    });
  });
  return lab;
}

test("a load's colour is that of its depths, and its dip the nearest to the shade, by a computation of its own", () => {
  const dyes = [straw, rose, lagoon].map((dye, i) => ({
    ...with_(dye, [0.5, 0.2, 0.05][i]!),
    law: "first-order" as const,
  }));
  const strengths = [0.7, 0.4, 0.2];
  const mix = mixOf(dyes.map((dye, i) => [dye, strengths[i]!] as const));
  const shade = shadeOf(mix, 75, 6);
  const batch = isothermal(batchOf(mix, [shade], { topUp: "none" }));
  const all = mixable(dyes);
  const fresh = (seconds: number): number[] =>
    all.map(({ model: { uptake } }, i) => {
      const g = (t: number): number => -Math.expm1(-uptake.ratePerSecond * t);
      return (strengths[i]! * g(seconds)) / g(uptake.referenceSeconds);
    });
  const target = labOf(all, fresh(75));
  const { loads } = planned(batch).baths[0]!;
  expect(loads.length).toBeGreaterThan(2);
  const area = loads[0]!.areaDm2;
  for (const load of loads) {
    const depths = load.mix!.map(({ depth }) => depth);
    labOf(all, depths).forEach((value, axis) => {
      expect(Math.abs(value - load.lab![axis]!)).toBeLessThan(1e-9);
    });
    expect(load.deltaE00).toBeCloseTo(ciede2000(target, labOf(all, depths)), 9);
    // D = s q (1 - κ A D/(2 N)) at this load's strengths, and no time near it comes nearer to the shade.
    const at = (seconds: number): number[] =>
      fresh(seconds).map((one, i) => {
        const { strengthBefore } = load.mix![i]!;
        const bathMl = strengthBefore * (load.volumeBeforeL / 6) * planMakeUp(batch)[i]!;
        let depth = one * strengthBefore;
        for (let n = 0; n < 60; n++)
          depth = one * strengthBefore * (1 - (dyes[i]!.uptakePerDm2 * area * depth) / (2 * bathMl));
        return depth;
      });
    const own = load.areaDm2 === area ? at(load.dipSeconds) : undefined;
    own?.forEach((depth, i) => {
      expect(depth).toBeCloseTo(depths[i]!, 6);
    });
    if (own !== undefined)
      for (const factor of [0.95, 0.98, 1.02, 1.05])
        expect(ciede2000(target, labOf(all, at(factor * load.dipSeconds)))).toBeGreaterThan(load.deltaE00!);
  }
});

const planMakeUp = (batch: ReturnType<typeof batchOf>): readonly number[] =>
  planned(batch).baths[0]!.makeUp.mix!.map(
    (one) => (one as unknown as { concentrateMl: number }).concentrateMl,
  );

test("topUp: strength brings each dye back, level pours liquor of the recipe", () => {
  const mix = mixOf([
    [with_(straw, 0.9), 0.8],
    [with_(rose, 0.1), 0.5],
  ]);
  const loads = (topUp: "level" | "strength") =>
    planned(batchOf(mix, [shadeOf(mix, 60, 9)], { topUp })).baths[0]!.loads;
  const restored = loads("strength").filter(({ topUp }) => topUp !== null);
  expect(restored.length).toBeGreaterThan(0);
  for (const load of restored)
    for (const { strengthAfter } of load.mix!) expect(strengthAfter).toBeCloseTo(1, 9);
  const levelled = loads("level").filter(({ topUp }) => topUp !== null);
  expect(levelled.length).toBeGreaterThan(0);
  for (const { topUp } of levelled) {
    const [a, b] = topUp!.mix!.map((one) => (one as unknown as { concentrateMl: number }).concentrateMl);
    expect(a! / b!).toBeCloseTo(0.8 / 0.5, 9);
  }
});

test("dye is paid for by each one's own price", () => {
  const mix = mixOf([
    [with_(straw, 0.5), 0.8],
    [with_(lagoon, 0.1), 0.3],
  ]);
  const plan = planned(batchOf(mix, [shadeOf(mix, 60, 9)], { after: "dump" }));
  const prices = [39, 58];
  const spent = plan.baths[0]!.dyeBalance.mix!.map((one) => {
    const { takenUpMl, draggedOutMl, leftMl } = one as unknown as Record<string, number>;
    return takenUpMl! + draggedOutMl! + leftMl!;
  });
  const expected = spent.reduce((sum, ml, i) => sum + (ml * prices[i]!) / 1000, 0);
  expect(plan.totals.lines!.dye).toBeCloseTo(expected, 9);
  expect(plan.prices.dyes).toEqual([
    { dye: "straw", price: 39 },
    { dye: "lagoon", price: 58 },
    // 80 mL of the one and 37.5 mL of the other in a litre of bath.
    { dye: "moss", price: expect.closeTo((80 * 39 + 37.5 * 58) / 117.5, 9) },
  ]);
  // So that a comparison tells a dearer dye from more of it.
  expect(costBatch(plan).orders[0]!.drivers).toMatchObject({
    dye: "moss",
    dyePrice: plan.prices.dyes[2]!.price,
  });
});

test("a mix whose dyes wear unequally leaves its shade: warned of over the tolerance, and not below", () => {
  const mix = mixOf([
    [with_(straw, 3), 0.8],
    [with_(lagoon, 0.03), 0.4],
  ]);
  const drift = (tolerance: number, topUp: "none" | "strength" = "none") =>
    planned(batchOf(mix, [shadeOf(mix, 60, tolerance)], { topUp }));
  const worst = Math.max(...drift(20).baths[0]!.loads.map(({ deltaE00 }) => deltaE00!));
  expect(worst).toBeGreaterThan(1);
  const told = (tolerance: number) =>
    drift(tolerance).warnings.filter(({ code }) => code === "mix-off-shade");
  expect(told(worst * 1.001)).toEqual([]);
  const [warning] = told(worst * 0.999);
  expect(warning!.message).toMatch(/its dyes have worn unequally \(straw \d+ %, lagoon \d+ %\)/);
  expect(warning!.help).toMatch(/^add \d+ mL of concentrate of straw.* before it, or write topUp: strength$/);
  expect(drift(worst * 0.999, "strength").warnings.map(({ code }) => code)).not.toContain("mix-off-shade");
  // The life of such a bath ends there, not when its dips grow long.
  expect(drift(worst * 0.999).baths[0]!.life.endedBy).toBe("off-shade");
});

test("what is printed of a kept mix is read back to the strength of each dye", () => {
  const mix = mixOf([
    [with_(straw, 1.5), 0.8],
    [with_(rose, 0.05), 0.5],
  ]);
  const first = planned(batchOf(mix, [shadeOf(mix, 60, 9)], { topUp: "none" })).baths[0]!.carryOver!;
  const strengths = first.mix!.map(({ strength }) => strength);
  expect(strengths[0]).toBeLessThan(strengths[1]!);
  expect(first.start).toContain(
    `strength: { straw: ${(100 * strengths[0]!).toFixed(1)} %, rose: ${(100 * strengths[1]!).toFixed(1)} % }`,
  );
  const again = planned(
    batchOf(mix, [shadeOf(mix, 60, 9)], {
      topUp: "none",
      start: {
        kind: "kept",
        volumeL: first.volumeL,
        strength: first.strength,
        strengthEach: strengths,
        ageDays: 0,
        areaDm2: 0,
      },
    }),
  ).baths[0]!;
  again.loads[0]!.mix!.forEach(({ strengthBefore }, i) => {
    expect(strengthBefore).toBeCloseTo(strengths[i]!, 9);
  });
});

test("a trial of the mix corrects its colours and its doubt", () => {
  const parts = [
    [straw, 0.8],
    [rose, 0.4],
  ] as const;
  const plain = mixOf(parts);
  const shade = (mix: Dye) => ({
    ...shadeOf(mix, 60),
    target: { kind: "colour" as const, colour: { kind: "lab" as const, lab: [70, 30, 25] as const } },
    tolerance: 30,
  });
  const before = planned(batchOf(plain, [shade(plain)]));
  const [load] = before.baths[0]!.loads;
  const [L, a, b] = load!.lab!;
  const tried = mixOf(parts, [
    { seconds: load!.dipSeconds, strengths: [0.8, 0.4], colour: { kind: "lab", lab: [L + 3, a - 2, b - 4] } },
  ]);
  const after = planned(batchOf(tried, [shade(tried)]));
  expect(Math.abs(after.baths[0]!.loads[0]!.dipSeconds - load!.dipSeconds)).toBeGreaterThan(1);
  const doubt = ({ assumptions }: Plan): number =>
    Number(
      /within ([\d.]+) CIEDE2000/.exec(
        assumptions.find(({ code }) => code === "assumed-mixture")!.message,
      )![1],
    );
  expect(doubt(after)).toBeLessThan(doubt(before) / 2);
});

test("a load is large by the dye of which it takes the greatest share", () => {
  const large = (strawUptake: number): string[] => {
    const mix = mixOf([
      [with_(straw, strawUptake), 0.2],
      [with_(rose, 0.01), 1],
    ]);
    const { warnings, baths } = planned(batchOf(mix, [shadeOf(mix, 60, 30)]));
    const [first] = baths[0]!.loads;
    const [each] = first!.mix! as unknown as { takenUpMl: number }[];
    const [made] = baths[0]!.makeUp.mix! as unknown as { concentrateMl: number }[];
    const share = each!.takenUpMl / made!.concentrateMl;
    expect(first!.strengthBefore).toBe(1);
    return warnings.flatMap(({ code, message }) =>
      code === "large-load" ? [`${(100 * share).toFixed(1)} %: ${message}`] : [],
    );
  };
  expect(large(3)).toEqual([]);
  const [told] = large(12);
  const [share] = told!.split(": ");
  expect(told).toContain(`it takes ${share} of the dye in the bath`);
});

test("a mix of dyes that were measured at unlike temperatures is warned of until it was tried", () => {
  const parts = [
    [straw, 0.8],
    [{ ...rose, celsius: 74 }, 0.4],
  ] as const;
  const codes = (trials: Parameters<typeof mixOf>[1]): string[] => {
    const mix = mixOf(parts, trials);
    return planned(batchOf(mix, [shadeOf(mix, 60)])).warnings.map(({ code }) => code);
  };
  const tried = {
    seconds: 60,
    strengths: [0.8, 0.4],
    colour: { kind: "lab" as const, lab: [70, 28, 28] as const },
  };
  expect(codes([])).toContain("unlike-temperatures");
  expect(codes([tried])).not.toContain("unlike-temperatures");
});

test("a trial that comes out as foretold corrects nothing, at whatever temperature the mix is dyed", () => {
  const parts = [
    [straw, 0.8],
    [rose, 0.4],
  ] as const;
  const at = (celsius: number, trials: Parameters<typeof mixOf>[1]) => {
    const mix: Dye = { ...mixOf(parts, trials), celsius };
    return planned(isothermal(batchOf(mix, [shadeOf(mix, 60)]))).baths[0]!.loads[0]!;
  };
  for (const celsius of [70, 80]) {
    // The colour of 60 s in a fresh bath, from a part that takes next to nothing up.
    const { lab } = at(celsius, []);
    const corrected = at(celsius, [
      { seconds: 60, strengths: [0.8, 0.4], colour: { kind: "lab", lab: lab! } },
    ]);
    expect(ciede2000(corrected.lab!, lab!)).toBeLessThan(0.05);
  }
});
