import { expect, test } from "vitest";
import { evaporationFluxKgM2H, surfaceLossWPerM2 } from "../../../../../src/core/bath/heat/evaporation.js";
import { lookUp } from "../../../../../src/core/bath/heat/working/celsius-table.js";
import { roomAir } from "../../../../../src/core/bath/heat/working/room-air.js";

const rooms = [
  { celsius: 20, humidity: 0.5 },
  { celsius: 20, humidity: 0.01 },
  { celsius: 5, humidity: 0.3 },
  { celsius: 10, humidity: 0.95 },
  { celsius: 35, humidity: 0.9 },
  { celsius: 20, humidity: 1 },
];

test.each(rooms)("the tables of a room of $celsius °C and humidity $humidity hold the laws", (room) => {
  const air = roomAir(room);
  const inOpenAir = { loss: 0, evaporation: 0 };
  let nearby = 0;
  for (let celsius = room.celsius + 0.007; celsius < 99; celsius += 0.0137) {
    const loss = surfaceLossWPerM2(celsius, room);
    const offW = Math.abs(lookUp(air.lossWPerM2, celsius) - loss);
    const evaporation = lookUp(air.evaporationKgM2H, celsius) / evaporationFluxKgM2H(celsius, room);
    if (celsius < room.celsius + 5) nearby = Math.max(nearby, offW);
    else {
      inOpenAir.loss = Math.max(inOpenAir.loss, offW / loss);
      inOpenAir.evaporation = Math.max(inOpenAir.evaporation, Math.abs(evaporation - 1));
    }
  }
  expect(inOpenAir.loss).toBeLessThan(2e-6);
  expect(inOpenAir.evaporation).toBeLessThan(2e-6);
  expect(nearby).toBeLessThan(0.5);
});
