import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type BlankBuild,
  blankCost,
  blankDifference,
  powderPerPartMass,
} from "../../../../src/core/cost/rate/blank.js";

const grey: BlankBuild = {
  massG: 6.4,
  powderPerKg: 54,
  refresh: 0.4,
  packing: 0.1,
  buildHours: 11,
  machinePerHour: 9.5,
  partsPerBuild: 180,
  finishing: 0.12,
};
const white: BlankBuild = { ...grey, powderPerKg: 62, refresh: 0.5, buildHours: 14 };

describe("blankCost", () => {
  // Grey: 6.4 g × 0.4/0.1 = 25.6 g × 0.054 = 1.3824; 11 h × 9.50/180 = 0.580556; 0.12.
  test("adds powder bought, machine hours and finishing", () => {
    const cost = blankCost(grey);
    expect(cost.powderG).toBeCloseTo(25.6, 12);
    expect(cost.powder).toBeCloseTo(1.3824, 12);
    expect(cost.machine).toBeCloseTo(0.5805555556, 9);
    expect(cost.total).toBeCloseTo(2.0829555556, 9);
  });

  // White: 6.4 × 5 = 32 g × 0.062 = 1.984; 14 × 9.50/180 = 0.738889.
  test("says what white costs more than grey, for powder and for machine", () => {
    const more = blankDifference(white, grey);
    expect(more.powder).toBeCloseTo(0.6016, 12);
    expect(more.machine).toBeCloseTo(0.1583333333, 9);
    expect(more.finishing).toBe(0);
    expect(more.total).toBeCloseTo(0.7599333333, 9);
    expect(blankDifference(grey, white).total).toBeCloseTo(-more.total, 12);
  });

  test("buys at least the mass of the part, and all powder anew where nothing is reused", () => {
    expect(powderPerPartMass(0, 0.1)).toBe(1);
    expect(powderPerPartMass(1, 0.125)).toBe(8);
  });

  // Powder bought = parts + powder thrown away; the next build is refresh fresh and the rest used.
  test("balances the powder of a build in steady state", () => {
    const share = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, (refresh, packing) => {
        const build = 1 / packing;
        const bought = powderPerPartMass(refresh, packing);
        const used = build - bought;
        const unsintered = build - 1;
        expect(unsintered - used).toBeGreaterThanOrEqual(-1e-9);
        expect(bought / build).toBeGreaterThanOrEqual(refresh - 1e-9);
      }),
    );
  });
});
