import { expect, test } from "vitest";
import { gasConstantJPerMolK, rateFactor } from "../../../../src/core/uptake/law/arrhenius.js";
import { type ApartDip, bathResponse } from "../../../../src/core/uptake/swatches/bath-response.js";

const plain = { strength: 1, celsius: 80, freshSeconds: 30, deviation: 0.1 };
/** A dip whose time is what an exponent and an energy make of its fresh time. */
const dip = (strength: number, celsius: number, p: number, energy: number, deviation = 0.1): ApartDip => ({
  ...plain,
  strength,
  celsius,
  deviation,
  seconds:
    (30 * strength ** -p) / rateFactor({ activationEnergyJPerMol: energy, celsius, referenceCelsius: 80 }),
});

test("one swatch in a half-strength bath tells the exponent, to its deviation over ln 2", () => {
  const { strengthExponent, activationEnergyJPerMol } = bathResponse([dip(0.5, 80, 1.4, 0)], 80, 75e3);
  expect(strengthExponent!.value).toBeCloseTo(1.4, 12);
  expect(strengthExponent!.standardError).toBeCloseTo(0.1 / Math.LN2, 12);
  expect(activationEnergyJPerMol).toBeUndefined();
});

test("one swatch in a cooler bath tells the activation energy, to its deviation over (1/T - 1/T_ref)/R", () => {
  const { strengthExponent, activationEnergyJPerMol } = bathResponse([dip(1, 72, 1, 60e3)], 80, 75e3);
  expect(strengthExponent).toBeUndefined();
  expect(activationEnergyJPerMol!.value / 60e3).toBeCloseTo(1, 9);
  const cold = (1 / 345.15 - 1 / 353.15) / gasConstantJPerMolK;
  expect(activationEnergyJPerMol!.standardError).toBeCloseTo(0.1 / cold, 3);
});

test("two swatches tell both; of one that is weak and cool the energy is taken as assumed or given", () => {
  const both = bathResponse([dip(0.5, 80, 1.4, 60e3), dip(0.7, 74, 1.4, 60e3)], 80, 75e3);
  expect(both.strengthExponent!.value).toBeCloseTo(1.4, 9);
  expect(both.activationEnergyJPerMol!.value / 60e3).toBeCloseTo(1, 6);
  const one = bathResponse([dip(0.5, 74, 1.4, 75e3)], 80, 75e3);
  expect(one.strengthExponent!.value).toBeCloseTo(1.4, 9);
  expect(one.activationEnergyJPerMol).toBeUndefined();
  const given = bathResponse([dip(0.5, 80, 1.4, 0), dip(1, 74, 1.4, 75e3)], 80, 75e3, true);
  expect(given.activationEnergyJPerMol).toBeUndefined();
});

test("the surer swatch counts for more, and figures stay within 0.5 to 4 and 0 to 150 kJ/mol", () => {
  const mixed = bathResponse([dip(0.5, 80, 1, 0, 0.01), dip(0.5, 80, 2, 0, 0.1)], 80, 75e3);
  expect(mixed.strengthExponent!.value).toBeCloseTo(1 + 1 / 101, 9);
  expect(bathResponse([dip(0.5, 80, 7, 0)], 80, 75e3).strengthExponent!.value).toBe(4);
  expect(bathResponse([dip(0.5, 80, 0.1, 0)], 80, 75e3).strengthExponent!.value).toBe(0.5);
  expect(bathResponse([dip(1, 70, 1, 220e3)], 80, 75e3).activationEnergyJPerMol!.value).toBe(150e3);
  expect(bathResponse([], 80, 75e3)).toEqual({});
});
