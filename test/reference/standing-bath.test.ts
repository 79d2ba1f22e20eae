import { expect, test } from "vitest";
import type { BathSetting } from "../../src/core/bath/load/bath-setting.js";
import { workOn } from "../../src/core/bath/load/work-load.js";
import { bathToWork, type WorkedBath } from "../../src/core/bath/load/worked-bath.js";
import type { TopUpRule } from "../../src/core/model/batch.js";
import { partsOf, setting, steadyHeat } from "../core/bath/settings.js";

// source: standingBathRuns. Twelve loads each; dye in units of which a fresh litre holds 100, so dye per litre is
// strength in per cent. In each load: uptake, drag-out of 0.03 L, evaporation of 0.15 L, refill to 6 L.
const area = 30;

/** A bath in which a load carries 30 mL out, drips for an hour and loses 0.15 L to the air meanwhile. */
const hourly = (uptake: number, rule: TopUpRule): BathSetting => ({
  ...setting,
  rule,
  dye: { ...setting.dye, uptakePerDm2: uptake / area },
  heat: steadyHeat(0.15),
  handling: {
    ...setting.handling,
    dragOutMlPerDm2: 1,
    liquorRatioLPerKg: 0,
    loadSeconds: 0,
    drainSeconds: 3600,
    rinseSeconds: 0,
    unloadSeconds: 0,
  },
});

/** Refilled with liquor of a strength, or by a rule of the bath's own. */
function strengths(uptake: (bath: WorkedBath) => number, refill: number | TopUpRule): number[] {
  const bath = bathToWork(setting.fresh, 80);
  return Array.from({ length: 12 }, () => {
    const rule = typeof refill === "number" ? "none" : refill;
    const worked = workOn(bath, hourly(uptake(bath), rule), { ...partsOf(area), depth: 1, freshSeconds: 0 });
    expect(worked).toBeUndefined();
    if (typeof refill === "number") {
      bath.dye += refill * (6 - bath.volumeL);
      bath.volumeL = 6;
    }
    expect(bath.volumeL).toBe(6);
    return bath.dye / bath.volumeL;
  });
}

function agree(actual: readonly number[], expected: readonly number[]): void {
  expect(actual).toHaveLength(expected.length);
  actual.forEach((strength, i) => {
    expect(Math.abs(strength - expected[i]!)).toBeLessThan(1e-8);
  });
}

const fourPercent = (bath: WorkedBath): number => 0.04 * bath.dye;

test("a bath that loses 4 % of its dye a load and is refilled with fresh liquor keeps 86 % after twelve", () => {
  agree(strengths(fourPercent, "level"), strengths(fourPercent, 100));
  agree(
    strengths(fourPercent, 100),
    [
      98.52, 97.106304, 95.755941581, 94.466075398, 93.23399522, 92.057112234, 90.932953606, 89.859157285,
      88.833467038, 87.853727715, 86.917880713, 86.023959657,
    ],
  );
});

test("the same bath refilled with water keeps 100 × 0.9552ⁿ", () => {
  const run = strengths(fourPercent, 0);
  agree(
    run,
    [
      95.52, 91.240704, 87.153120461, 83.248660664, 79.519120666, 75.956664061, 72.553805511, 69.303395024,
      66.198602927, 63.232905516, 60.400071348, 57.694148152,
    ],
  );
  run.forEach((strength, i) => {
    expect(strength).toBeCloseTo(100 * 0.9552 ** (i + 1), 11);
  });
});

test("a bath that gives 12 units a load and is refilled at 180 % grows to 134 % after twelve", () => {
  agree(
    strengths(() => 12, 180),
    [
      102.91, 105.80545, 108.68642275, 111.552990636, 114.405225683, 117.243199555, 120.066983557,
      122.876648639, 125.672265396, 128.453904069, 131.221634549, 133.975526376,
    ],
  );
});
