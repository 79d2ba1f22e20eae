import fc from "fast-check";
import { expect, test } from "vitest";
import { loadsPerFilling, looseLimit, rinsesEnough } from "../../../../src/core/bath/rinse/enough-rinses.js";
import { type RinsedLoad, rinseLoads } from "../../../../src/core/bath/rinse/rinse-loads.js";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const loadsOf: fc.Arbitrary<readonly RinsedLoad[]> = fc.array(
  fc.record({ dragOutL: real(0.005, 0.1), dyePerL: real(10, 200), takenUp: real(0.05, 5) }),
  { minLength: 1, maxLength: 20 },
);

test("one rinse fewer than enough leaves 1 % or more loose", () => {
  fc.assert(
    fc.property(loadsOf, real(0.5, 5), fc.integer({ min: 1, max: 6 }), (loads, waterL, every) => {
      const rinses = rinsesEnough(loads, { waterL, every });
      const shareAfter = (count: number): number =>
        rinseLoads(loads, { rinses: count, waterL, every }).looseShare;
      if (rinses === undefined) expect(shareAfter(12)).toBeGreaterThanOrEqual(looseLimit);
      else {
        expect(shareAfter(rinses)).toBeLessThan(looseLimit);
        if (rinses > 1) expect(shareAfter(rinses - 1)).toBeGreaterThanOrEqual(looseLimit);
      }
    }),
  );
});

test("one load more to a filling than it serves leaves 1 % or more loose", () => {
  fc.assert(
    fc.property(loadsOf, real(0.5, 5), fc.integer({ min: 1, max: 3 }), (loads, waterL, rinses) => {
      const every = loadsPerFilling(loads, { waterL, rinses });
      const shareAt = (count: number): number =>
        rinseLoads(loads, { rinses, waterL, every: count }).looseShare;
      if (every > 0) expect(shareAt(every)).toBeLessThan(looseLimit);
      if (every < loads.length) expect(shareAt(every + 1)).toBeGreaterThanOrEqual(looseLimit);
    }),
  );
});

// 99 parts of water to one of drag-out leave 1 % of what clings; as much dye again in the part makes that 0.99 %.
test("1 % itself is too much: the limit has loads on either side", () => {
  const clinging = (takenUp: number): RinsedLoad[] => [{ dragOutL: 0.02, dyePerL: 100, takenUp }];
  expect(rinsesEnough(clinging(2), { waterL: 1.98, every: 1 })).toBe(1);
  expect(rinsesEnough(clinging(1.98), { waterL: 1.98, every: 1 })).toBe(2);
});

test("rinses in less water than clings to the parts are never enough", () => {
  expect(
    rinsesEnough([{ dragOutL: 1, dyePerL: 100, takenUp: 0.01 }], { waterL: 0.1, every: 1 }),
  ).toBeUndefined();
  expect(loadsPerFilling([{ dragOutL: 1, dyePerL: 100, takenUp: 0.01 }], { waterL: 0.1, rinses: 1 })).toBe(0);
});
