import fc from "fast-check";
import { expect, test } from "vitest";
import { looseLeft } from "../../../../src/core/bath/rinse/rinse.js";
import { type RinsedLoad, rinseLoads } from "../../../../src/core/bath/rinse/rinse-loads.js";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const loadsOf: fc.Arbitrary<readonly RinsedLoad[]> = fc.array(
  fc.record({ dragOutL: real(0, 0.2), dyePerL: real(0, 200), takenUp: real(0, 20) }),
  { maxLength: 30 },
);
const baths = fc.record({
  rinses: fc.integer({ min: 0, max: 4 }),
  waterL: real(0.2, 10),
  every: fc.integer({ min: 1, max: 8 }),
});
const load: RinsedLoad = { dragOutL: 0.02, dyePerL: 100, takenUp: 2 };

test("dye that is dragged in goes with the water or stays on the parts", () => {
  fc.assert(
    fc.property(loadsOf, baths, (loads, how) => {
      const { dyeToWaste, dyeOnParts } = rinseLoads(loads, how);
      const draggedIn = loads.reduce((sum, { dragOutL, dyePerL }) => sum + dragOutL * dyePerL, 0);
      expect(Math.abs(dyeToWaste + dyeOnParts - draggedIn)).toBeLessThan(1e-12 * draggedIn + 1e-15);
    }),
  );
});

test("with fresh water for each load rⁿ of the dye on the parts stays loose", () => {
  fc.assert(
    fc.property(loadsOf, baths, (loads, { rinses, waterL }) => {
      const { dyeOnParts } = rinseLoads(loads, { rinses, waterL, every: 1 });
      const left = loads.reduce(
        (sum, { dragOutL, dyePerL }) => sum + dragOutL * dyePerL * looseLeft(dragOutL, waterL, rinses),
        0,
      );
      expect(Math.abs(dyeOnParts - left)).toBeLessThan(1e-12 * left + 1e-15);
    }),
  );
});

test("a filling that serves several loads leaves more on each than on the one before", () => {
  const shares = [1, 2, 3, 4].map(
    (count) => rinseLoads(new Array(count).fill(load), { rinses: 1, waterL: 2, every: 4 }).looseShare,
  );
  expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  // By hand, W = 2 L, D = 0.02 L: c = c_in D/(W + D) (1 + W/(W + D)) after two loads.
  const strength = 100 * (0.02 / 2.02) * (1 + 2 / 2.02);
  expect(shares[1]).toBeCloseTo((0.02 * strength) / (0.02 * strength + 2), 14);
});

test("the share is that of the worst load, wherever it is", () => {
  const heavy = { ...load, dragOutL: 0.06 };
  const how = { rinses: 1, waterL: 2, every: 1 };
  const alone = rinseLoads([heavy], how).looseShare;
  for (const loads of [
    [heavy, load, load],
    [load, heavy, load],
    [load, load, heavy],
  ])
    expect(rinseLoads(loads, how).looseShare).toBe(alone);
});

test("water is filled in for each begun filling, in every rinse", () => {
  const litres = (loads: number, every: number, rinses: number): number =>
    rinseLoads(new Array(loads).fill(load), { rinses, waterL: 2, every }).litres;
  expect(litres(0, 1, 2)).toBe(0);
  expect(litres(3, 1, 1)).toBe(6);
  expect(litres(8, 4, 2)).toBe(8);
  expect(litres(9, 4, 2)).toBe(12);
});

test("without rinses all that clings to the parts is loose, and nothing is wasted", () => {
  const { litres, looseShare, dyeToWaste, dyeOnParts } = rinseLoads([load], {
    rinses: 0,
    waterL: 2,
    every: 1,
  });
  expect([litres, looseShare, dyeToWaste, dyeOnParts]).toEqual([0, 0.5, 0, 2]);
});
