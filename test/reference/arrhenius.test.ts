import { expect, test } from "vitest";
import { gasConstantJPerMolK, rateFactor } from "../../src/core/uptake/law/arrhenius.js";

/** kJ/mol, °C, °C, k(T2)/k(T1): computed elsewhere in double precision with R = 8.314462618 (source: codata2018). */
const factors: readonly (readonly [number, number, number, number])[] = [
  [47.5, 70, 80, 1.60228207],
  [47.5, 80, 90, 1.56121692],
  [47.5, 80, 81, 1.04673796],
  [47.5, 60, 80, 2.64100392],
  [75, 70, 80, 2.10509676],
  [75, 80, 90, 2.02054389],
  [75, 80, 81, 1.07478876],
  [75, 60, 80, 4.63394767],
  [105, 70, 80, 2.83518165],
  [105, 80, 90, 2.67704458],
  [105, 80, 81, 1.10624765],
  [105, 60, 80, 8.55719789],
  [117, 70, 80, 3.19377575],
  [117, 80, 90, 2.99592218],
  [117, 80, 81, 1.11908753],
  [117, 60, 80, 10.9366359],
];

test.each(factors)(
  "%d kJ/mol from %d to %d °C speeds dyeing up by %d",
  (kJ, referenceCelsius, celsius, ratio) => {
    const factor = rateFactor({ activationEnergyJPerMol: kJ * 1000, celsius, referenceCelsius });
    expect(Math.abs(factor / ratio - 1)).toBeLessThan(1e-7);
  },
);

test("the activation energy published for a wet-treated nylon gives its rate ratio from 60 to 80 °C", () => {
  // source: orangeTwoNylon, 18 kcal/mol = 75.3 kJ/mol; the ratio was computed from it
  const factor = rateFactor({ activationEnergyJPerMol: 75.3e3, celsius: 80, referenceCelsius: 60 });
  expect(Math.abs(factor - 4.66246)).toBeLessThan(1e-4);
});

test("the published activation energy less R T is the published activation enthalpy within 0.5 kJ/mol", () => {
  // source: chairat2005, 47.5 and 44.7 kJ/mol
  const enthalpy = 47.5 - (gasConstantJPerMolK * 303.15) / 1000;
  expect(Math.abs(enthalpy - 44.7)).toBeLessThan(0.5);
});
