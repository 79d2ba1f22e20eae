import { expect, test } from "vitest";
import { checkCoolTo, checkStarts } from "../../../src/batch-file/checks/baths.js";
import { coldPerHot } from "../../../src/core/bath/water.js";

function codes(check: typeof checkStarts, batch: object): string[] {
  const found: string[] = [];
  check(batch as never, (code) => found.push(code));
  return found;
}

test("a bath starts with at most what its tank holds, 1.15 times its volume where nothing else is written", () => {
  const starting = (tank: object, volume: number) =>
    codes(checkStarts, {
      tanks: { six: tank },
      baths: [{ tank: "six", start: { volume: { value: volume } } }],
    });
  expect([6.89, 6.91].map((volume) => starting({ volume: { value: 6 } }, volume).length)).toEqual([0, 1]);
  const brim = { volume: { value: 6 }, capacity: { value: 7.5 } };
  expect([7.49, 7.51].map((volume) => starting(brim, volume).length)).toEqual([0, 1]);
});

test("a cold volume counts as what it is when the bath is hot", () => {
  const starting = (hotL: number) =>
    codes(checkStarts, {
      room: { temperature: { value: 15 } },
      tanks: { six: { volume: { value: 6 } } },
      dyes: { coral: { temperature: { value: 80 } } },
      baths: [{ tank: "six", dye: "coral", start: { coldVolume: { value: hotL * coldPerHot(80, 15) } } }],
    });
  expect([6.89, 6.91].map((hotL) => starting(hotL).length)).toEqual([0, 1]);
});

/** Faults of a batch with a bath of each of two dyes; temperatures in °C. */
const cooling = (room: number, coolTo: number | undefined, ...dyes: readonly [number, number]) =>
  codes(checkCoolTo, {
    room: { temperature: { value: room } },
    dyes: {
      coral: { temperature: { value: dyes[0] } },
      moss: { temperature: { value: dyes[1] } },
      spare: { temperature: { value: 99 } },
    },
    baths: [
      { tank: "six", dye: "coral" },
      { tank: "six", dye: "moss" },
    ],
    ...(coolTo === undefined ? {} : { handling: { coolTo: { value: coolTo } } }),
  }).length;

test("baths cool to a temperature above the room's, and to a written one only where the hottest dye in a bath is hotter", () => {
  expect([20, 20.1, 59.9, 60].map((coolTo) => cooling(20, coolTo, 60, 50))).toEqual([1, 0, 0, 1]);
  expect([44.9, 45].map((room) => cooling(room, undefined, 60, 50))).toEqual([0, 1]);
});

test("a bath that is used below the default of coolTo is emptied as it is", () => {
  expect([45.1, 45, 40].map((dye) => cooling(20, undefined, dye, dye))).toEqual([0, 0, 0]);
});

test("coolTo is not checked where it, the room or the dye could not be read", () => {
  const batch = {
    room: { temperature: { value: 46 } },
    dyes: { coral: { temperature: { value: 60 } } },
    baths: [{ tank: "six", dye: "coral" }],
  };
  expect(codes(checkCoolTo, batch)).toEqual(["cool-to"]);
  for (const unread of [
    { handling: { coolTo: undefined } },
    { room: { temperature: undefined } },
    { dyes: { coral: { temperature: undefined } } },
    { dyes: { coral: null } },
  ])
    expect(codes(checkCoolTo, { ...batch, ...unread })).toEqual([]);
});
