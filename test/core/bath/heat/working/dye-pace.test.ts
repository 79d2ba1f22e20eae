import { expect, test } from "vitest";
import { dyePace } from "../../../../../src/core/bath/heat/working/dye-pace.js";
import { rateFactor } from "../../../../../src/core/uptake/law/arrhenius.js";

test.each([
  [0, 80, 1e-15],
  [45_000, 77.3, 2e-9],
  [75_000, 80, 2e-8],
  [117_000, 63.77, 2e-7],
  [150_000, 95, 5e-7],
])(
  "the tabulated pace of %d J/mol at %d °C is rateFactor to %d from 15 °C on",
  (energy, celsius, allowed) => {
    const pace = dyePace(energy, celsius);
    expect(pace(celsius)).toBe(1);
    for (let at = 15; at < 100; at += 0.0137) {
      const exact = rateFactor({ activationEnergyJPerMol: energy, celsius: at, referenceCelsius: celsius });
      expect(Math.abs(pace(at) / exact - 1)).toBeLessThan(allowed);
    }
  },
);
