import { expect, test } from "vitest";
import { type BlendAsked, blend } from "../../../../src/core/recipe/blend/blend.js";
import { ksAfter } from "../../../../src/core/recipe/blend/illuminants.js";
import { costPerL } from "../../../../src/core/recipe/blend/recipe-cost.js";
import { labOfDepths, mixedLab, mixtureOf } from "../../../../src/core/recipe/mixture/mixture.js";
import { pouredFor } from "../../../../src/core/recipe/solve/amounts.js";
import { freshDepth } from "../../../../src/core/uptake/law/uptake-model.js";
import { labAfter } from "../../../../src/core/uptake/swatches/shade-curve.js";
import { handling } from "../../plan/sample.js";
import { someDyes } from "../some-dyes.js";

const dyes = someDyes(71, 3);
const asked = (more: Partial<BlendAsked> = {}): BlendAsked => ({
  dyes,
  target: mixedLab(mixtureOf(dyes, 60), [0.2, 0.1, 0.3]),
  seconds: 60,
  coldMl: () => 5840,
  capacityMl: () => 7000,
  trials: [],
  bases: [],
  rates: { waterPerM3: 4 },
  handling,
  ...more,
});

test("amounts, water and the cold volume of a recipe belong together, in the tank and in the jar", () => {
  const [recipe] = blend(asked()).recipes;
  for (const { dyes: poured, waterMl, coldMl } of [recipe!, recipe!.jar]) {
    const dye = poured.reduce((sum, one) => sum + ("concentrateMl" in one ? one.concentrateMl : 0), 0);
    expect(dye + waterMl).toBeCloseTo(coldMl, 6);
    for (const one of poured)
      expect("concentrateMl" in one && one.concentrateMl).toBeCloseTo(one.strength * 0.1 * coldMl, 6);
  }
  expect(recipe!.coldMl).toBe(5840);
  expect(recipe!.jar.coldMl).toBe(500);
});

test("a litre costs its dyes at their price, and its water", () => {
  // 0.2 of 100 mL and 0.1 of 100 mL at 46 a litre; 970 mL of water at 4 a m³.
  expect(costPerL(dyes.slice(0, 2), [0.2, 0.1], { waterPerM3: 4 })).toBeCloseTo(0.03 * 46 + 0.97e-3 * 4, 9);
  const { price: _, ...unpriced } = dyes[0]!.model.dye;
  const dye = { ...dyes[0]!, model: { ...dyes[0]!.model, dye: unpriced } };
  expect(costPerL([dye], [0.2], {})).toBeUndefined();
});

test("a colour out of reach is said with how far and in which way", () => {
  const vivid = blend(asked({ target: [60, 90, 60] }));
  expect(vivid.nearest).toBeGreaterThan(5);
  expect(vivid.nearestBecause).toBe("too dull");
  const within = blend(asked());
  expect(within.nearest).toBeLessThan(0.01);
});

/** Two of the dyes, so many times stronger, without what their own curves miss; and what a minute in both gives. */
function stronger(times: number) {
  const strong = dyes.slice(0, 2).map((dye) => {
    const { chosen } = dye.model;
    const absorption = chosen.curve.absorption.map((value) => times * value);
    return {
      ...dye,
      ownBase: false,
      model: { ...dye.model, chosen: { ...chosen, curve: { ...chosen.curve, absorption } } },
    };
  });
  const depths = strong.map(({ model }) => freshDepth(model.uptake, 60));
  return { strong, target: labOfDepths(mixtureOf(strong, 60), depths) };
}

test("two dips are offered for dark colours that they reach: under L* 40", () => {
  let times = 0.1;
  while (stronger(times).target[0] >= 40) times *= 1.02;
  const [dark, lighter] = [stronger(times), stronger(times / 1.02)];
  expect(lighter.target[0]).toBeLessThan(40.5);
  const offered = ({ strong, target }: typeof dark) => blend(asked({ dyes: strong, target })).twoDips;
  expect(offered(dark)!.deltaE00).toBeLessThan(0.05);
  expect(offered(lighter)).toBeNull();
  // Dark, and nothing that two dips come nearer to than one bath.
  expect(blend(asked({ target: [30, -30, 0] })).twoDips).toBeNull();
});

test("differences under other light are known only where dyes and target were measured", () => {
  expect(blend(asked()).recipes[0]!.deltaE00ByIlluminant).toBeNull();
  const measured = someDyes(71, 3, "spectrophotometer");
  const { model } = measured[0]!;
  const target = labAfter(model.chosen.curve, 30);
  const targetKs = ksAfter(model, 30);
  const known = blend(asked({ dyes: measured, target, targetKs })).recipes;
  const alone = known.find(({ dyes: of }) => of.length === 1 && of[0]!.dye === "dye 1")!;
  expect(alone.deltaE00ByIlluminant!.A).toBeLessThan(1.5);
  const others = blend(asked({ dyes: measured.slice(1), target, targetKs })).recipes;
  expect(others[0]!.deltaE00ByIlluminant!.A).toBeGreaterThan(alone.deltaE00ByIlluminant!.A);
  expect(blend(asked({ target, targetKs })).recipes[0]!.deltaE00ByIlluminant).toBeNull();
});

const trial = (strengths: readonly number[], coldMl: number) => ({
  dyes,
  strengths,
  poured: pouredFor(dyes, strengths, coldMl),
  seconds: 60,
  lab: mixedLab(mixtureOf(dyes, 60), strengths),
});

test("after a trial there is one recipe, and what brings the bath there", () => {
  const standing = trial([0.15, 0.1, 0.25], 5840);
  const after = blend(asked({ trials: [standing], standing }));
  expect(after.recipes).toHaveLength(1);
  expect(after.recipes[0]!.deltaE00).toBeLessThan(0.25);
  expect(after.recipes[0]!.doubt95).toBeLessThan(blend(asked()).recipes[0]!.doubt95);
  expect(after.addition!.makeAfresh).toBe(false);
  expect(after.addition!.bathColdMl).toBeLessThanOrEqual(7000);
  expect(after.addition!.deltaE00).toBeLessThan(0.3);
});

test("a bath that is much too strong is made afresh", () => {
  const standing = trial([0.8, 0.1, 0.3], 5840);
  const after = blend(asked({ trials: [standing], standing }));
  expect(after.addition!.makeAfresh).toBe(true);
});

test("a first recipe is shown on every base with a colour", () => {
  const grey = { name: "grey", lab: [40, 0, -1] as const };
  const { onBases } = blend(asked({ bases: [{ name: "white" }, grey] }));
  expect(onBases.map(({ base, estimated }) => [base, estimated])).toEqual([["grey", true]]);
  expect(onBases[0]!.lab[0]).toBeLessThan(40.5);
});

test("what trials corrected holds on every base", () => {
  const natural = { name: "white", lab: dyes[0]!.model.chosen.curve.set.base.lab };
  const read = { ...trial([0.15, 0.1, 0.25], 5840), lab: [55, 5, 5] as const };
  const { onBases, recipes } = blend(asked({ trials: [read], bases: [natural] }));
  onBases[0]!.lab.forEach((value, axis) => {
    expect(value).toBeCloseTo(recipes[0]!.lab[axis]!, 6);
  });
});
