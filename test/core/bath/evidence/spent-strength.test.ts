import fc from "fast-check";
import { expect, test } from "vitest";
import { spentStrength } from "../../../../src/core/bath/evidence/spent-strength.js";
import { strengthOfSlowerDip } from "../../../../src/core/bath/evidence/strength-of-slower-dip.js";
import { lawNames } from "../../../../src/core/uptake/law/laws.js";
import { slowing } from "../../../../src/core/uptake/law/slowing.js";
import { freshSeconds } from "../../../../src/core/uptake/law/uptake-model.js";
import { model } from "../settings.js";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

test("a bath worked in 4,000 small loads is left with the strength of the closed form", () => {
  fc.assert(
    fc.property(
      fc.constantFrom("none" as const, "water" as const, "fresh" as const),
      real(0, 0.5),
      real(0, 0.4),
      real(0, 0.4),
      (rule, taken, dragged, evaporated) => {
        const loads = 4000;
        const fresh = { volumeL: 6, dye: 600 };
        let bath = fresh;
        for (let i = 0; i < loads; i++) {
          const dyed = bath.dye - (600 * taken) / loads;
          const dragL = (6 * dragged) / loads;
          const dye = dyed - dyed * (dragL / bath.volumeL);
          const volumeL = bath.volumeL - dragL - (6 * evaporated) / loads;
          const pouredL = rule === "none" ? 0 : 6 - volumeL;
          bath = { volumeL: volumeL + pouredL, dye: dye + (rule === "fresh" ? 100 * pouredL : 0) };
        }
        const area = 500;
        const strength = spentStrength({
          volumeL: 6,
          dyePerL: 100,
          areaDm2: area,
          takenUpPerDm2: (600 * taken) / area,
          dragOutLPerDm2: (6 * dragged) / area,
          evaporationLPerDm2: (6 * evaporated) / area,
          refill: rule,
        });
        expect(Math.abs(bath.dye / bath.volumeL / 100 - strength)).toBeLessThan(1e-3);
      },
    ),
    { numRuns: 60, seed: 6 },
  );
});

test("a bath that drains and evaporates away has no strength", () => {
  const dry = { volumeL: 6, dyePerL: 100, areaDm2: 4000, takenUpPerDm2: 0.01 };
  expect(
    spentStrength({ ...dry, dragOutLPerDm2: 0.001, evaporationLPerDm2: 0.001, refill: "none" }),
  ).toBeNaN();
});

test("the strength that a longer dip tells gives that longer dip", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...lawNames),
      fc.option(real(0.2, 3), { nil: undefined }),
      real(0.05, 0.95),
      real(1.1, 5),
      (law, saturation, depth, ratio) => {
        const one = { ...model, law, ...(saturation === undefined ? {} : { saturation }) };
        const { strength } = strengthOfSlowerDip(one, depth, ratio)!;
        expect(slowing(one, freshSeconds(one, depth)!, strength)).toBeCloseTo(ratio, 8);
      },
    ),
  );
});

test("a depth that even the fresh bath does not reach, or that takes no time, tells no strength", () => {
  expect(strengthOfSlowerDip(model, 1.2, 2)).toBeUndefined();
  expect(strengthOfSlowerDip(model, 0, 2)).toBeUndefined();
});

test("under the parabolic law a time four times as long tells half the strength, uncertain by the root of the ratio's share", () => {
  const parabolic = { ...model, law: "parabolic" } as const;
  const { strength, strengthError } = strengthOfSlowerDip(parabolic, 0.3, 4, 0.21)!;
  expect(strength).toBeCloseTo(0.5, 12);
  expect(strengthError).toBeCloseTo((0.5 * 1.1 - 0.5 / 1.1) / 2, 12);
});
