import { expect, test } from "vitest";
import { straightLine } from "../../src/core/cost/rate/depreciation.js";
import { machineHourRate, sharedCharge } from "../../src/core/cost/rate/machine-hour.js";
import { roundMoney } from "../../src/core/cost/rounding.js";

test("a machine of 19000 costs 13191 a year and 7.33 an hour", () => {
  // source: costingExercises
  const hours = 1800;
  const depreciation = straightLine({ price: 19000, installation: 1500, salvage: 2500, life: 10 });
  const water = (100 * hours * 0.5) / 1000;
  const operator = sharedCharge(400 * 12, { used: 1, of: 2 });
  const supervisor = sharedCharge(900 * 12, { used: 1, of: 2 });
  const power = (4 * hours * 30) / 100;
  const rent = sharedCharge(900 * 12, { used: 1, of: 16 });
  expect([depreciation, water, operator, supervisor, power, rent]).toEqual([1800, 90, 2400, 5400, 2160, 675]);
  const charges = [depreciation, 450, water, operator, supervisor, power, 216, rent];
  expect(machineHourRate(charges, 1)).toBe(13191);
  expect(roundMoney(machineHourRate(charges, hours), "EUR")).toBe(7.33);
});

test("a machine of 11500 costs 620 a month and 3.875 an hour", () => {
  // source: costingExercises
  const perHour = straightLine({ price: 11500, salvage: 1500, life: 20000 });
  const rent = sharedCharge(400, { used: 25, of: 100 });
  const staff = sharedCharge(200 + 100, { used: 1, of: 2 });
  const light = sharedCharge(160, { used: 8, of: 32 });
  const indirect = sharedCharge(100, { used: 1, of: 2 });
  const other = light + 160 + indirect + 40;
  expect([perHour, perHour * 160, rent, staff, other]).toEqual([0.5, 80, 100, 150, 290]);
  const charges = [perHour * 160, rent, staff, other];
  expect(machineHourRate(charges, 1)).toBe(620);
  expect(machineHourRate(charges, 160)).toBe(3.875);
});

test("hourly items of 1.80, 0.90, 0.30 and 0.95 add up to 3.95, where a published page printed 4.95", () => {
  // source: costingExercises, total corrected
  const depreciation = straightLine({ price: 19200, salvage: 1200, life: 10000 });
  const repairs = roundMoney(machineHourRate([150], 166), "EUR");
  const standing = roundMoney(machineHourRate([50], 166), "EUR");
  const power = 5 * 0.19;
  expect([depreciation, repairs, standing, power]).toEqual([1.8, 0.9, 0.3, 0.95]);
  expect(roundMoney(machineHourRate([depreciation, repairs, standing, power], 1), "EUR")).toBe(3.95);
});

test("3000 over 1500 h and 50000 over 2000 h are 2 and 25 an hour", () => {
  // source: costingExercises, calculator page
  expect(straightLine({ price: 4000, salvage: 1000, life: 1500 })).toBe(2);
  expect(straightLine({ price: 60000, salvage: 10000, life: 2000 })).toBe(25);
});

test("a press of 58000 loses 9600 a year, 0.05 a print, 9000 in a year of 180000 prints", () => {
  // source: financialAccounting
  expect(straightLine({ price: 58000, salvage: 10000, life: 5 })).toBe(9600);
  const perPrint = straightLine({ price: 58000, salvage: 10000, life: 960000 });
  expect(perPrint).toBe(0.05);
  expect(180000 * perPrint).toBe(9000);
});
