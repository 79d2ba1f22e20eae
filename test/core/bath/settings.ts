import fc from "fast-check";
import { bathHeat, vapourLPerS } from "../../../src/core/bath/heat/working/bath-heat.js";
import { cooledShare } from "../../../src/core/bath/heat/working/cooled-share.js";
import { dyePace } from "../../../src/core/bath/heat/working/dye-pace.js";
import { type BathSetting, strengthOf } from "../../../src/core/bath/load/bath-setting.js";
import type { BathState } from "../../../src/core/bath/load/bath-state.js";
import type { LoadWork } from "../../../src/core/bath/load/load-work.js";
import { workOn } from "../../../src/core/bath/load/work-load.js";
import { bathToWork } from "../../../src/core/bath/load/worked-bath.js";
import { dipTimer } from "../../../src/core/uptake/law/dip-time.js";
import { lawNames } from "../../../src/core/uptake/law/laws.js";
import { freshSeconds, type UptakeModel } from "../../../src/core/uptake/law/uptake-model.js";
import { handling, hook } from "../plan/sample.js";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

export const model: UptakeModel = {
  law: "first-order",
  ratePerSecond: 0.012,
  referenceSeconds: 300,
  referenceCelsius: 80,
  activationEnergyJPerMol: 75_000,
};

const room = { celsius: 20, humidity: 0.5 };
const open = {
  wallAreaDm2: 0,
  insulation: "none",
  cover: "none",
  heaterEfficiency: 0.9,
  agitationW: 0,
} as const;
const square = bathHeat({ ...open, surfaceCm2: 1e4 }, 80, room);

/** A bath at 80 °C that an endless heater holds there, and that loses so much water in an hour [L, hot]. */
export const steadyHeat = (evaporationLPerHour: number) =>
  bathHeat(
    {
      ...open,
      surfaceCm2: (1e4 * evaporationLPerHour) / 3600 / vapourLPerS(square, square.dipping.openM2, 80),
    },
    80,
    room,
  );

/** A bath of 6 L with 600 mL of concentrate at 80 °C; nothing cools it, and 0.36 L an hour evaporate. */
export const setting: BathSetting = {
  dye: { uptakePerDm2: 0.03, dilution: { kind: "liquid", fraction: 0.1 } },
  handling: { ...handling, loadPartSeconds: 0, unloadPartSeconds: 0 },
  tank: { volumeL: 6, capacityL: 1e6 },
  rule: "strength",
  timer: dipTimer(model, 80),
  pace: dyePace(75_000, 80),
  heat: steadyHeat(0.36),
  cooled: cooledShare(steadyHeat(0.36), handling.coolToCelsius),
  fresh: { volumeL: 6, dye: 600 },
  coldPerHot: 1,
  partsCelsius: 20,
  topUpCelsius: 80,
};

/** Parts of an area in all, without a heat of their own. */
export const partsOf = (areaDm2: number, parts = 10, massG = 5): Pick<LoadWork, "part" | "parts"> => ({
  part: { ...hook, perLoad: 1e6, massG, volumeCm3: 1, areaDm2: areaDm2 / parts, heatCapacityKjPerKgK: 0 },
  parts,
});

/** One load on a bath that stays as it is; undefined where it cannot be worked. */
export function workLoad(one: BathSetting, state: BathState, load: LoadWork) {
  const bath = bathToWork(state, one.heat.celsius);
  if (workOn(bath, one, load) !== undefined) return undefined;
  const after = { volumeL: bath.volumeL, dye: bath.dye };
  return {
    ...bath,
    topUp: bath.toppedUp ? { dye: bath.topUpDye, waterMl: bath.topUpWaterMl } : null,
    strengthAfter: strengthOf(after, one.fresh),
    after,
  };
}

/** What a depth asks of the bath of `setting`. */
export const toDepth = (depth: number): { readonly depth: number; readonly freshSeconds: number } => ({
  depth,
  freshSeconds: freshSeconds(model, depth)!,
});

/** Baths of all laws, sizes and losses, with a mix of loads that takes up to a fifth of the dye. */
export const baths: fc.Arbitrary<{ setting: BathSetting; mix: readonly LoadWork[] }> = fc
  .record({
    law: fc.constantFrom(...lawNames),
    saturation: fc.option(real(0.2, 3), { nil: undefined }),
    volumeL: real(1, 40),
    perL: real(5, 300),
    dragOutMlPerDm2: real(0, 4),
    evaporationLPerHour: real(0.01, 2),
    /** Null: an endless heater, and nothing cools the bath. */
    heaterWPerL: fc.option(real(60, 400), { nil: null }),
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
    const heat =
      drawn.heaterWPerL === null
        ? steadyHeat(drawn.evaporationLPerHour)
        : bathHeat(
            {
              surfaceCm2: 75 * volumeL,
              wallAreaDm2: 3 * volumeL,
              insulation: "foam",
              cover: "lid",
              heaterEfficiency: 0.9,
              heaterW: drawn.heaterWPerL * volumeL,
              agitationW: 20 * volumeL,
            },
            80,
            room,
          );
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
        tank: { volumeL, capacityL: 1e6 },
        rule: drawn.rule,
        timer: dipTimer(uptake, uptake.referenceCelsius),
        fresh: { volumeL, dye },
        pace: dyePace(75_000, 80),
        heat,
        cooled: cooledShare(heat, handling.coolToCelsius),
        coldPerHot: drawn.coldPerHot,
        partsCelsius: 20,
        topUpCelsius: drawn.heaterWPerL === null ? 80 : 20,
      },
      mix: drawn.loads.map(({ areaDm2PerL, depth }) => ({
        part: {
          ...partsOf(areaDm2PerL * volumeL, 10, 5 * volumeL).part,
          heatCapacityKjPerKgK: drawn.heaterWPerL === null ? 0 : 1.7,
        },
        parts: 10,
        depth,
        freshSeconds: freshSeconds(uptake, depth)!,
      })),
    };
  });
