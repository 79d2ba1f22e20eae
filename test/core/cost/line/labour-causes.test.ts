import { expect, test } from "vitest";
import type { LineOfOrder } from "../../../../src/core/cost/line/change.js";
import { noRates } from "../../../../src/core/cost/line/drivers.js";
import { labourCauses } from "../../../../src/core/cost/line/labour-causes.js";

/** Labour of ten loads whose dips take some seconds in a bath of some strength, at 36 an hour. */
const dipped = (dipSeconds: number, strength: number): LineOfOrder => ({
  amount: 10 * (dipSeconds + 100) * 0.01,
  quantity: 100,
  started: 100,
  drivers: {
    dye: "moss",
    dyePrice: null,
    loads: 10,
    partsPerLoad: 10,
    dipSeconds,
    cycleSeconds: dipSeconds + 100,
    strength,
    ...noRates,
    labourPerHour: 36,
  },
});

/** The cause that a dip of 60 s which came to last 66 s is laid to. */
const longerDip = (strengthBefore: number, strengthNow: number): string[] =>
  labourCauses([dipped(60, strengthBefore), dipped(66, strengthNow)])
    .filter(({ change }) => Math.abs(change) > 1e-9)
    .map(({ code }) => code);

test("a longer dip is laid to the strength where that fell by 0.2 % or more, else to the time itself", () => {
  expect(longerDip(1, 0.9979)).toEqual(["strength"]);
  expect(longerDip(1, 0.9981)).toEqual(["dip-time"]);
  expect(longerDip(0.9979, 1)).toEqual(["dip-time"]);
});

test("a shorter dip is laid to the strength where that rose by 0.2 % or more", () => {
  const causes = (strength: number) =>
    labourCauses([dipped(66, 0.95), dipped(60, strength)]).filter(({ change }) => Math.abs(change) > 1e-9);
  expect(causes(0.9521)).toMatchObject([{ code: "strength", before: 0.95, now: 0.9521 }]);
  expect(causes(0.9519)).toMatchObject([{ code: "dip-time", before: 66, now: 60 }]);
  // Six seconds less in ten loads at 0.01 a second, over a hundred parts.
  expect(causes(0.9521)[0]!.change).toBeCloseTo(-0.006, 12);
});
