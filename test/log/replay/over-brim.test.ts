import { expect, test } from "vitest";
import type { RealBath } from "../../../src/core/bath/replay/real-bath.js";
import { overBrim } from "../../../src/log/replay/over-brim.js";

const real = { setting: { tank: { capacityL: 7 } } } as RealBath;
const said = (row: object) => overBrim(real, { row: 3, ...row }).map(({ message }) => message);

test("what fits into the tank twice may be a tank that was described too small", () => {
  expect(said({})).toEqual([]);
  expect(said({ volumeL: 14, concentrateMl: 14_000, waterMl: 14_000 })).toEqual([]);
});

test("levels and amounts over twice the tank are faults at their cells", () => {
  expect(said({ volumeL: 14.01, concentrateMl: 14_001, waterMl: 5_260_000 })).toEqual([
    "row 3, column volumeL: 14.01 L is more than 2 times what the tank holds, 7 L",
    "row 3, column concentrateMl: 14001 mL is more than 2 times what the tank holds, 7 L",
    "row 3, column waterMl: 5260000 mL is more than 2 times what the tank holds, 7 L",
  ]);
});
