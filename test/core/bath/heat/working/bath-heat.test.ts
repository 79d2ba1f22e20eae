import { expect, test } from "vitest";
import { tankLossW } from "../../../../../src/core/bath/heat/heat-loss.js";
import { evaporationKgPerH } from "../../../../../src/core/bath/heat/heating.js";
import { bathHeat, bathLossW, vapourLPerS } from "../../../../../src/core/bath/heat/working/bath-heat.js";
import { waterDensityKgM3 } from "../../../../../src/core/bath/water.js";
import { room, six } from "./tanks.js";

const phases = [
  ["covered", "heating"],
  ["dipping", "dipping"],
  ["open", "dipping"],
  ["cooling", "bare"],
] as const;

test.each(["none", "lid", "balls"] as const)(
  "with cover %s each phase loses what the tank loses",
  (cover) => {
    const tank = { ...six, cover };
    const heat = bathHeat(tank, 80, room);
    for (const [phase, as] of phases)
      for (const celsius of [30, 54.3, 80, 95]) {
        const { openM2 } = heat[phase];
        expect(bathLossW(heat, openM2, celsius) / tankLossW(tank, celsius, room, as)).toBeCloseTo(1, 5);
        const litres = (1000 * evaporationKgPerH(tank, celsius, room, as)) / waterDensityKgM3(80) / 3600;
        expect(vapourLPerS(heat, openM2, celsius) / litres).toBeCloseTo(1, 5);
      }
  },
);

test("the heater gives its power times its efficiency, agitation all of its own, and only while parts are dipped", () => {
  const { covered, dipping, open, cooling } = bathHeat(six, 80, room);
  expect([covered, dipping, open, cooling].map(({ heatingW }) => heatingW)).toEqual([810, 810, 810, 0]);
  expect([covered, dipping, open, cooling].map(({ agitationW }) => agitationW)).toEqual([0, 180, 0, 0]);
});

test("a heater that is not known has no limit, but is off while the bath cools", () => {
  const { heaterW: _, ...unknown } = six;
  const { covered, cooling } = bathHeat(unknown, 80, room);
  expect(covered.heatingW).toBe(Number.POSITIVE_INFINITY);
  expect(cooling.heatingW).toBe(0);
});
