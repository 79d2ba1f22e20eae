import fc from "fast-check";
import { expect, test } from "vitest";
import { evaporationFluxKgM2H, surfaceLossWPerM2 } from "../../../../src/core/bath/heat/evaporation.js";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rooms = fc.record({ celsius: number(0, 40), humidity: number(0, 1) });

test("evaporation is never negative, and zero where the air at the surface is heavier than the room's", () => {
  fc.assert(
    fc.property(number(0, 99.9), rooms, (celsius, room) => {
      expect(evaporationFluxKgM2H(celsius, room)).toBeGreaterThanOrEqual(0);
    }),
  );
  expect(evaporationFluxKgM2H(15, { celsius: 30, humidity: 0.4 })).toBe(0);
});

test("hotter liquor loses more, which the search for the reachable temperature relies on", () => {
  fc.assert(
    fc.property(rooms, number(0, 1), number(0.01, 5), (room, share, step) => {
      const celsius = room.celsius + share * (99.9 - room.celsius - step);
      expect(surfaceLossWPerM2(celsius + step, room)).toBeGreaterThan(surfaceLossWPerM2(celsius, room));
    }),
  );
});

test("water at the temperature of a saturated room loses nothing at all", () => {
  expect(surfaceLossWPerM2(20, { celsius: 20, humidity: 1 })).toBe(0);
});
