import fc from "fast-check";
import { expect, test } from "vitest";
import { ciede2000 } from "../../../src/core/colour/difference/ciede2000.js";
import type { Bath, Dye, Lab } from "../../../src/core/model/batch.js";
import { planBatch } from "../../../src/core/plan/plan.js";
import { describeShade } from "../../../src/core/uptake/shade/describe-shade.js";
import { planReport } from "../../../src/report/plan/report.js";
import { shadeReport } from "../../../src/report/shade/report.js";
import { batch, bath, dye, handling, hook, isothermal, order } from "./sample.js";

const { ratePerSecond: _, ...rest } = dye;
const read: readonly (readonly [number, Lab])[] = [
  [15, [80.2, 21.7, 9.8]],
  [30, [73.5, 33.0, 15.9]],
  [60, [65.9, 44.6, 23.0]],
  [180, [55.2, 55.9, 31.8]],
];
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A dye that takes next to nothing up, so that its bath stays as it is asked about. */
const coral: Dye = {
  ...rest,
  law: "auto",
  uptakePerDm2: 1e-12,
  base: { name: "white", lab: [92.1, -0.6, -2.3] },
  swatches: read.map(([seconds, lab]) => ({ seconds, colour: { kind: "lab" as const, lab } })),
};

test("plan, shade and their JSON say the same of the same bath", () => {
  fc.assert(
    fc.property(
      real(0.3, 1.4),
      fc.constantFrom("auto", "first-order", "second-order", "parabolic", "cegarra-puente"),
      real(20, 150),
      fc.option(fc.record({ seconds: real(20, 90), at: fc.constantFrom(1, 2) }), { nil: undefined }),
      (strength, law, seconds, drawn) => {
        const one: Dye = { ...coral, law };
        const [, lab] = read[drawn?.at ?? 0]!;
        const trial = drawn && { seconds: drawn.seconds, colour: { kind: "lab" as const, lab } };
        const start: Bath["start"] = { kind: "kept", volumeL: 6, strength, ageDays: 0, areaDm2: 0 };
        const target = { kind: "time" as const, seconds };
        const shade = { name: "asked", dye: one, target, tolerance: 1.5 };
        const plan = planBatch(
          isothermal({
            ...batch,
            yield: 1,
            baths: [{ ...bath, dye: one, start, topUp: "none", ...(trial ? { trial } : {}) }],
            orders: [order(0, hook, shade, 1)],
          }),
        );
        const told = describeShade(
          one,
          handling,
          { strength, celsius: one.celsius, ...(trial ? { trial } : {}) },
          { name: "asked", target, tolerance: 1.5 },
        );
        if (!plan.ok || !told.ok || told.value === null) throw new Error("no plan or no shade");
        const load = plan.value.baths[0]!.loads[0]!;
        const time = told.value.target!;
        expect(load.dipSeconds / time.seconds).toBeCloseTo(1, 9);
        for (const end of [0, 1] as const)
          expect(load.windowSeconds![end]! / time.windowSeconds![end]!).toBeCloseTo(1, 9);
        expect(load.slopePerSecond! / time.slopePerSecond!).toBeCloseTo(1, 6);
        expect(ciede2000(load.lab!, time.lab!)).toBeLessThan(1e-9);
        const json = (report: { readonly data: unknown }) => JSON.parse(JSON.stringify(report.data));
        expect(json(planReport(plan.value)).baths[0].loads[0].dipSeconds).toBe(load.dipSeconds);
        expect(json(shadeReport(told.value)).target.seconds).toBe(time.seconds);
      },
    ),
    { numRuns: 40 },
  );
});
