import { expect, test } from "vitest";
import { ciede2000 } from "../../../../src/core/colour/difference/ciede2000.js";
import { gasConstantJPerMolK } from "../../../../src/core/uptake/law/arrhenius.js";
import { equivalentSeconds } from "../../../../src/core/uptake/law/dip-time.js";
import { dyeModel } from "../../../../src/core/uptake/shade/dye-model.js";
import { colourPerSecond } from "../../../../src/core/uptake/shade/find-time.js";
import { type MeantDip, sensitivity } from "../../../../src/core/uptake/shade/sensitivity.js";
import { labAfter } from "../../../../src/core/uptake/swatches/shade-curve.js";
import { handling } from "../../plan/sample.js";
import { asRead, inventedDye, seeded } from "./invented-dyes.js";

const random = seeded(6);
const dyes = Array.from({ length: 12 }, () => {
  const model = dyeModel(asRead(inventedDye(random), 0, random), handling);
  if (!model.ok) throw new Error(JSON.stringify(model.faults));
  return { curve: model.value.chosen!.curve, model: model.value.uptake };
});
const fresh: MeantDip = { seconds: 45, strength: 1, celsius: 80 };
const of = (dye: (typeof dyes)[number], dip: MeantDip, tolerance = 1.5) =>
  sensitivity({ ...dye, dip, tolerance, makeUpDye: 600 });
const colour = ({ curve, model }: (typeof dyes)[number], dip: MeantDip) =>
  labAfter(curve, equivalentSeconds(model, dip));

test("per second it is the slope of the shade curve in a fresh bath", () => {
  for (const dye of dyes)
    expect(of(dye, fresh).seconds.perUnit).toBeCloseTo(colourPerSecond(dye.curve, 45), 8);
});

test("a degree is worth t Ea/(R T²) seconds, since only k(T) t counts", () => {
  for (const dye of dyes) {
    const { seconds, celsius } = of(dye, { seconds: 45, strength: 0.9, celsius: 75 });
    const secondsPerDegree = (45 * 75_000) / (gasConstantJPerMolK * (75 + 273.15) ** 2);
    expect(celsius.perUnit / seconds.perUnit / secondsPerDegree).toBeCloseTo(1, 3);
  }
});

test("with the parabolic law a per cent of strength is worth two per cent of the time", () => {
  for (const { curve, model } of dyes) {
    const parabolic = {
      curve: { ...curve, law: "parabolic" },
      model: { ...model, law: "parabolic" },
    } as const;
    const { seconds, strengthPercent } = of(parabolic, fresh);
    expect(strengthPercent.perUnit / (0.02 * 45 * seconds.perUnit)).toBeCloseTo(1, 3);
  }
});

test("of a make-up of 600 mL, 6 mL are a per cent of strength", () => {
  for (const dye of dyes) {
    const { strengthPercent, makeUpDye } = of(dye, { ...fresh, strength: 0.8 });
    expect(makeUpDye.perUnit).toBeCloseTo(strengthPercent.perUnit / 6, 12);
    if (strengthPercent.hold.within !== null)
      expect(makeUpDye.hold.within).toBeCloseTo(6 * strengthPercent.hold.within, 9);
  }
});

test("at the end of each hold the shade is its tolerance away, and nowhere before", () => {
  let ends = 0;
  for (const dye of dyes) {
    const dip = { ...fresh, strength: 0.9 };
    const meant = colour(dye, dip);
    const vary: Record<"seconds" | "celsius" | "strengthPercent", (by: number) => MeantDip> = {
      seconds: (by) => ({ ...dip, seconds: 45 + by }),
      celsius: (by) => ({ ...dip, celsius: 80 + by }),
      strengthPercent: (by) => ({ ...dip, strength: 0.9 * (1 + by / 100) }),
    };
    for (const key of ["seconds", "celsius", "strengthPercent"] as const) {
      const { less, more, within } = of(dye, dip)[key].hold;
      for (const end of [less === null ? null : -less, more]) {
        if (end === null) continue;
        ends++;
        const off = (share: number) => ciede2000(colour(dye, vary[key](share * end)), meant);
        expect(off(1)).toBeCloseTo(1.5, 6);
        for (const share of [0.2, 0.5, 0.9]) expect(off(share)).toBeLessThan(1.5);
      }
      expect(within).toBe(less === null || more === null ? (less ?? more) : Math.min(less, more));
    }
  }
  expect(ends).toBeGreaterThan(50);
});

test("a target that the dip itself misses takes its share of the tolerance, and all of it where it is too far", () => {
  const dye = dyes[0]!;
  const own = colour(dye, fresh);
  const at = (away: number) =>
    sensitivity({
      ...dye,
      dip: fresh,
      tolerance: 1.5,
      makeUpDye: 600,
      target: colour(dye, { ...fresh, seconds: 45 + away }),
    })!.seconds.hold;
  const full = of(dye, fresh).seconds.hold;
  expect(ciede2000(own, colour(dye, { ...fresh, seconds: 46 }))).toBeLessThan(1.5);
  expect(at(1).less).toBeLessThan(full.less!);
  expect(at(1).more).toBeGreaterThan(full.more!);
  expect(at(90)).toEqual({ less: 0, more: 0, within: 0 });
});
