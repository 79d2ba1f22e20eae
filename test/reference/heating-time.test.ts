import { expect, test } from "vitest";
import { sensibleHeatKj } from "../../src/core/bath/heat/heating.js";
import { liquorJPerLK } from "../../src/core/bath/heat/mixing-temperature.js";
import { kwhOf } from "../../src/core/bath/heat/power.js";
import { bathHeat } from "../../src/core/bath/heat/working/bath-heat.js";
import { heatState } from "../../src/core/bath/heat/working/heat-state.js";
import { riseTo } from "../../src/core/bath/heat/working/rise-and-fall.js";
import { six } from "../core/bath/heat/working/tanks.js";

/** Water of a volume in a tank that loses nothing, warmed by a heater; the pages take 4.2 kJ/(L K). */
function warmed({ litres, from, to, watts }: { litres: number; from: number; to: number; watts: number }) {
  const lossless = { ...six, surfaceCm2: 0, wallAreaDm2: 0, heaterW: watts, heaterEfficiency: 1 };
  const heat = bathHeat(lossless, to, { celsius: 20, humidity: 0.5 });
  const state = heatState(from, (litres * 4200) / liquorJPerLK(to));
  return { hours: riseTo(heat, state, to)! / 3600, kwh: state.heaterKwh };
}

test("20 L take 1.867 kWh from 20 to 100 °C, and 0.52 h at 3.6 kW", () => {
  // source: heatingTimePages, science teaching; a second site prints -6.67 to 37.8 °C for the same sum, by mistake
  const { hours, kwh } = warmed({ litres: 20, from: 20, to: 100, watts: 3600 });
  expect(hours).toBeCloseTo(0.52, 2);
  expect(Math.abs(hours / 0.518519 - 1)).toBeLessThan(1e-5);
  expect(kwh).toBeCloseTo(1.867, 3);
  expect(kwhOf(1000 * sensibleHeatKj(20, 80, 4.2))).toBeCloseTo(kwh, 12);
});

test("10 L take 0.525 kWh from 25 to 70 °C, and 7 min at 4.5 kW", () => {
  // source: heatingTimePages, electrical engineering
  const { hours, kwh } = warmed({ litres: 10, from: 25, to: 70, watts: 4500 });
  expect(kwh).toBeCloseTo(0.525, 9);
  expect(hours).toBeCloseTo(0.12, 2);
  expect(60 * hours).toBeCloseTo(7, 9);
});
