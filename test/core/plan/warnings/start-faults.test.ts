import { expect, test } from "vitest";
import { startFaults } from "../../../../src/core/plan/warnings/start-faults.js";
import { bath, dye, handling, hook, light, order, tank } from "../sample.js";

const codes = (start: { volumeL: number; ageDays: number }, everyDays = 1): string[] =>
  startFaults(
    { handling },
    {
      ...bath,
      topUp: "none",
      dye: { ...dye, shelfLifeDays: 60 },
      start: { kind: "kept", strength: 1, areaDm2: 0, ...start },
      everyDays,
    },
    [],
  ).map(({ code }) => code);

test("a kept bath starts low under 98 % of its mark", () => {
  const at = (share: number) => codes({ volumeL: share * tank.volumeL, ageDays: 0 });
  expect(at(0.979)).toEqual(["bath-starts-low"]);
  expect(at(0.981)).toEqual([]);
});

test("a kept bath is too full from 2 % above its mark on, which makes its loads smaller", () => {
  const at = (share: number) => codes({ volumeL: tank.volumeL / share, ageDays: 0 });
  expect(at(0.981)).toEqual([]);
  expect(at(0.979)).toEqual(["bath-too-full"]);
});

test("a bath in which not one part goes in under the freeboard is an error", () => {
  const room = tank.capacityL * (1 - handling.freeboard);
  const severity = (volumeL: number) =>
    startFaults(
      { handling },
      { ...bath, start: { kind: "kept", strength: 1, areaDm2: 0, ageDays: 0, volumeL } },
      [
        {
          order: { ...order(0, hook, light, 1), shade: light },
          part: hook,
          parts: 1,
          depth: 0.5,
          freshSeconds: 30,
          again: false,
        },
      ],
    ).map((fault) => [fault.code, fault.severity]);
  expect(severity(room - 0.0069)).toEqual([["bath-too-full", "warning"]]);
  expect(severity(room - 0.0068)).toEqual([["bath-too-full", "error"]]);
});

test("a kept bath is too old after its shelf life, and ages out when the next batch falls after it", () => {
  const at = (ageDays: number) => codes({ volumeL: tank.volumeL, ageDays }, 7);
  expect(at(53)).toEqual([]);
  expect(at(54)).toEqual(["bath-ages-out"]);
  expect(at(60)).toEqual(["bath-ages-out"]);
  expect(at(61)).toEqual(["bath-too-old"]);
});
