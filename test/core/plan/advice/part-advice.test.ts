import { expect, test } from "vitest";
import type { Part } from "../../../../src/core/model/batch.js";
import { softWallMm } from "../../../../src/core/part/wall.js";
import { adviceFor } from "../../../../src/core/plan/advice/part-advice.js";

/** A part of 10 cm2 by its density and mean wall. */
const part = (name: string, densityGPerCm3: number, wallMm: number): Part => ({
  name,
  areaDm2: 0.1,
  volumeCm3: wallMm / 2,
  massG: (densityGPerCm3 * wallMm) / 2,
  heatCapacityKjPerKgK: 1.7,
});
const codes = (celsius: number, ...parts: Part[]) =>
  adviceFor(1, celsius, parts, 0.8).map(({ part: name, code }) => `${name} ${code}`);

test("adviceFor names a part that is lighter than water at the bath's temperature", () => {
  // Water has 0.972 g/cm3 at 80 °C and 0.998 at 20 °C.
  expect(codes(80, part("clip", 0.965, 3))).toEqual(["clip floats"]);
  expect(codes(80, part("clip", 0.98, 3))).toEqual([]);
  expect(codes(20, part("clip", 0.98, 3))).toEqual(["clip floats"]);
  expect(codes(80, part("clip", 1.14, 3))).toEqual([]);
});

test("adviceFor names a part whose mean wall is below the threshold, with its wall", () => {
  expect(codes(80, part("tray", 1.1, softWallMm + 0.01))).toEqual([]);
  const [advice] = adviceFor(2, 80, [part("tray", 1.1, softWallMm - 0.01)], 0.8);
  expect(advice).toMatchObject({ code: "thin-walls", bath: 2, part: "tray" });
  expect(advice!.meanWallMm).toBeCloseTo(softWallMm - 0.01, 9);
  expect(advice!.message).toBe("tray: thin walls soften in the hot bath: support and cool flat");
});

test("adviceFor names a part that carries out half as much again as others: it has cups", () => {
  const cup = (dragOutMlPerDm2: number): Part => ({ ...part("cup", 1.1, 3), dragOutMlPerDm2 });
  expect(codes(80, cup(1.19))).toEqual([]);
  expect(codes(80, cup(1.21))).toEqual(["cup holds-liquor"]);
});

test("adviceFor names each part once a bath, in the order of the loads", () => {
  const [clip, tray] = [part("clip", 0.93, 3), part("tray", 0.93, 1)];
  expect(codes(80, tray, clip, tray, clip)).toEqual(["tray floats", "tray thin-walls", "clip floats"]);
});
