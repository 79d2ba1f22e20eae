import { expect, test } from "vitest";
import { startFaults } from "../../../../src/core/plan/warnings/start-faults.js";
import { bath, dye, handling, tank } from "../sample.js";

const codes = (start: { volumeL: number; ageDays: number }, everyDays = 1): string[] =>
  startFaults(
    {
      ...bath,
      dye: { ...dye, shelfLifeDays: 60 },
      start: { kind: "kept", strength: 1, areaDm2: 0, ...start },
      everyDays,
    },
    handling,
    [],
  ).map(({ code }) => code);

test("a kept bath starts low under 98 % of its mark", () => {
  const at = (share: number) => codes({ volumeL: share * tank.volumeL, ageDays: 0 });
  expect(at(0.979)).toEqual(["bath-starts-low"]);
  expect(at(0.981)).toEqual([]);
});

test("a kept bath is too full beyond the freeboard", () => {
  const room = tank.capacityL * (1 - handling.freeboard);
  expect(codes({ volumeL: 0.999 * room, ageDays: 0 })).toEqual([]);
  expect(codes({ volumeL: 1.001 * room, ageDays: 0 })).toEqual(["bath-too-full"]);
});

test("a kept bath is too old after its shelf life, and ages out when the next batch falls after it", () => {
  const at = (ageDays: number) => codes({ volumeL: tank.volumeL, ageDays }, 7);
  expect(at(53)).toEqual([]);
  expect(at(54)).toEqual(["bath-ages-out"]);
  expect(at(60)).toEqual(["bath-ages-out"]);
  expect(at(61)).toEqual(["bath-too-old"]);
});
