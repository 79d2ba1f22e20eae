import { expect, test } from "vitest";
import { filledInSeries, washedOut, washOutTime } from "../../src/core/bath/rinse/wash-out.js";

test("20 kg of salt in 200 L are 7.36 kg after 40 min at 5 L/min", () => {
  // source: mixingTanks
  const left = washedOut(20, { flow: 5, volume: 200 }, 40);
  expect(left).toBeCloseTo(7.36, 2);
  expect(left).toBeCloseTo(7.357588823428847, 12);
});

test("100 gal at 2 gal/min lose half of their salt in 34.66 min", () => {
  // source: tutoringPages (2018)
  const tank = { flow: 2, volume: 100 };
  expect(washOutTime(0.5, tank)).toBeCloseTo(34.66, 2);
  expect(washedOut(10, tank, washOutTime(0.5, tank))).toBeCloseTo(5, 12);
});

test("of two 200 L tanks in a row at 5 kg/L and 2 L/min, 100 min bring 632.1206 and 264.2411 kg", () => {
  // source: mixingTanks, second formula corrected
  const full = 5 * 200;
  expect(full * filledInSeries(1, (2 * 100) / 200)).toBeCloseTo(632.1206, 4);
  expect(full * filledInSeries(2, (2 * 100) / 200)).toBeCloseTo(264.2411, 4);
});
