import { expect, test } from "vitest";
import { wallLossW } from "../../src/core/bath/heat/heat-loss.js";
import { wallTransmission } from "../../src/core/bath/heat/wall-transmission.js";

// source: steelTankExercise, water of 95 °C behind 12 mm of steel, air of 15 °C
const steel = { insideWPerM2K: 2850, outsideWPerM2K: 10, layers: [{ mm: 12, wPerMK: 50 }] };

test("a bare steel wall passes 9.94 W/(m² K), 795.2 W/m² at 80 K", () => {
  const transmission = wallTransmission(steel);
  expect(Math.abs(transmission / 9.94126 - 1)).toBeLessThan(1e-5);
  expect(Math.abs((80 * transmission) / 795.301 - 1)).toBeLessThan(1e-5);
  expect(Math.abs(80 * transmission - 795.2)).toBeLessThan(0.2);
});

test("its outer face has 94.52 °C: the film of air carries all of the difference", () => {
  const outer = 15 + (80 * wallTransmission(steel)) / steel.outsideWPerM2K;
  expect(outer).toBeCloseTo(94.52, 1);
});

test("a bare wall is taken to lose 21 % more: a film of 12 W/(m² K), not of 10", () => {
  const ours = wallLossW({ wallAreaDm2: 100, insulation: "none" }, 95, { celsius: 15, humidity: 0.5 });
  expect(ours / (80 * wallTransmission(steel))).toBeCloseTo(1.207, 3);
});
