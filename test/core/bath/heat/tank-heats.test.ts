import { expect, test } from "vitest";
import { TankHeats } from "../../../../src/core/bath/heat/tank-heats.js";
import type { Room, Tank } from "../../../../src/core/model/batch.js";
import { tank } from "../../plan/sample.js";

const { heaterW: _, ...unheated } = tank;
const room: Room = { celsius: 20, humidity: 0.5 };

test("heats that many tanks share are those of each tank alone", () => {
  const heats = new TankHeats();
  const asked: [Tank, number, Room][] = [
    [tank, 80, room],
    [{ ...tank, name: "other" }, 80, room],
    [tank, 70, room],
    [tank, 80, { ...room, celsius: 10 }],
    [tank, 80, { ...room, humidity: 0.9 }],
    [{ ...tank, volumeL: 5 }, 80, room],
    [{ ...tank, surfaceCm2: 500 }, 80, room],
    [{ ...tank, wallAreaDm2: 20 }, 80, room],
    [{ ...tank, insulation: "foam" }, 80, room],
    [{ ...tank, cover: "balls" }, 80, room],
    [{ ...tank, heaterW: 900 }, 80, room],
    [{ ...tank, heaterEfficiency: 0.8 }, 80, room],
    [unheated, 80, room],
    [tank, 80, room],
  ];
  for (const one of asked) expect(heats.at(...one)).toEqual(new TankHeats().at(...one));
  expect(new Set(asked.map((one) => JSON.stringify(heats.at(...one)))).size).toBe(asked.length - 2);
});

test("a tank is heated once for each temperature and room, whatever its name and price", () => {
  const heats = new TankHeats();
  const first = heats.at(tank, 80, room);
  expect(heats.at({ ...tank, name: "other", equipment: { price: 1, lifeHours: 1 } }, 80, { ...room })).toBe(
    first,
  );
  expect(heats.at(tank, 81, room)).not.toBe(first);
});
