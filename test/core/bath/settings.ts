import fc from "fast-check";
import type { LifeLoad } from "../../../src/core/bath/life/bath-life.js";
import type { BathSetting } from "../../../src/core/bath/load/work-load.js";
import { dipTimer } from "../../../src/core/uptake/law/dip-time.js";
import { lawNames } from "../../../src/core/uptake/law/laws.js";
import { freshSeconds, type UptakeModel } from "../../../src/core/uptake/law/uptake-model.js";
import { handling } from "../plan/sample.js";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

export const model: UptakeModel = {
  law: "first-order",
  ratePerSecond: 0.012,
  referenceSeconds: 300,
  referenceCelsius: 80,
  activationEnergyJPerMol: 75_000,
};

/** A bath of 6 L with 600 mL of concentrate at 80 °C. */
export const setting: BathSetting = {
  dye: { uptakePerDm2: 0.03, dilution: { kind: "liquid", fraction: 0.1 } },
  handling,
  rule: "strength",
  timer: dipTimer(model, 80),
  fresh: { volumeL: 6, dye: 600 },
  evaporationLPerSecond: 1e-4,
  coldPerHot: 1,
};

/** What a depth asks of the bath of `setting`. */
export const toDepth = (depth: number): { readonly depth: number; readonly freshSeconds: number } => ({
  depth,
  freshSeconds: freshSeconds(model, depth)!,
});

/** Baths of all laws, sizes and losses, with a mix of loads that takes up to a fifth of the dye. */
export const baths: fc.Arbitrary<{ setting: BathSetting; mix: readonly LifeLoad[] }> = fc
  .record({
    law: fc.constantFrom(...lawNames),
    saturation: fc.option(real(0.2, 3), { nil: undefined }),
    volumeL: real(1, 40),
    perL: real(5, 300),
    dragOutMlPerDm2: real(0, 4),
    evaporationLPerHour: real(0.01, 2),
    coldPerHot: real(0.95, 1),
    liquid: fc.boolean(),
    rule: fc.constantFrom("none" as const, "level" as const, "strength" as const),
    loads: fc.array(fc.record({ areaDm2PerL: real(0.05, 8), share: real(0, 0.05), depth: real(0.05, 0.9) }), {
      minLength: 1,
      maxLength: 5,
    }),
  })
  .map((drawn) => {
    const { saturation, volumeL, perL } = drawn;
    const uptake: UptakeModel = {
      ...model,
      law: drawn.law,
      ...(saturation === undefined ? {} : { saturation }),
    };
    const dye = volumeL * perL;
    // One κ serves all loads: it is set by the load that asks for most.
    const heaviest = Math.max(...drawn.loads.map(({ areaDm2PerL, depth }) => areaDm2PerL * depth));
    const uptakePerDm2 = (perL / heaviest) * Math.max(...drawn.loads.map(({ share }) => share));
    return {
      setting: {
        dye: {
          uptakePerDm2,
          dilution: drawn.liquid
            ? { kind: "liquid" as const, fraction: perL / 1000 / drawn.coldPerHot }
            : { kind: "powder" as const, gramsPerL: perL / drawn.coldPerHot },
        },
        handling: { ...handling, dragOutMlPerDm2: drawn.dragOutMlPerDm2, liquorRatioLPerKg: 0 },
        rule: drawn.rule,
        timer: dipTimer(uptake, uptake.referenceCelsius),
        fresh: { volumeL, dye },
        evaporationLPerSecond: drawn.evaporationLPerHour / 3600,
        coldPerHot: drawn.coldPerHot,
      },
      mix: drawn.loads.map(({ areaDm2PerL, depth }) => ({
        areaDm2: areaDm2PerL * volumeL,
        depth,
        freshSeconds: freshSeconds(uptake, depth)!,
        parts: 10,
        massG: 50,
      })),
    };
  });
