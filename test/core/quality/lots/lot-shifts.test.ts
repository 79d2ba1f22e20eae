import { expect, test } from "vitest";
import { type LotReading, lotShifts } from "../../../../src/core/quality/lots/lot-shifts.js";

const reading = (lot: string, by: number, noise = 0): LotReading => ({
  lot,
  foreseen: [60, 10, 10],
  read: [60 + noise, 10, 10 + by],
  deltaE00PerLogTime: 5,
});
const noises = [0.3, -0.3, 0.2, -0.2, 0.1, -0.1];

test("one lot alone is compared with nothing", () => {
  expect(lotShifts(noises.map((noise) => reading("a", 0, noise)))).toEqual([]);
  expect(lotShifts([])).toEqual([]);
});

test("a lot is named on the far side of its doubt, and not on the near side", () => {
  const shifted = (by: number) =>
    lotShifts([
      ...noises.map((noise) => reading("a", 0, noise)),
      ...noises.map((noise) => reading("b", by, noise)),
    ])[0]!;
  const { doubt95, deltaE00, loads, shift } = shifted(3);
  expect([loads, shift[2]]).toEqual([6, expect.closeTo(3, 12)]);
  const perUnit = deltaE00 / 3;
  expect(shifted((0.95 * doubt95) / perUnit).named).toBe(false);
  expect(shifted((1.1 * doubt95) / perUnit).named).toBe(true);
});

test("more loads of a lot make its doubt smaller", () => {
  const doubt = (count: number) =>
    lotShifts([
      ...noises.map((noise) => reading("a", 0, noise)),
      ...noises.slice(0, count).map((noise) => reading("b", 2, noise)),
    ])[0]!.doubt95;
  expect(doubt(6)).toBeLessThan(doubt(2));
});
