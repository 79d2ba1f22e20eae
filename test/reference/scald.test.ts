import { expect, test } from "vitest";
import { scald } from "../../src/core/plan/advice/scald.js";

const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

// source: scaldPlumbing, °F, seconds to a second and to a third degree burn
const plumbing = [
  [113, 7200, 10800],
  [116.6, 1200, 2700],
  [118.4, 900, 1200],
  [120, 480, 600],
  [124, 120, 252],
  [131, 17, 30],
  [140, 3, 5],
] as const;

// source: scaldHospital, °F, seconds to a serious burn
const hospital = [
  [145, 3],
  [150, 1.5],
  [155, 1],
] as const;

test("scald gives the published times at the published temperatures, in °F as printed", () => {
  for (const [fahrenheit, second, third] of plumbing) {
    const row = scald(celsius(fahrenheit) + 0.05);
    expect(row).toMatchObject({ secondDegreeSeconds: second, seriousSeconds: third });
    expect(row?.celsius).toBeCloseTo(celsius(fahrenheit), 1);
  }
  for (const [fahrenheit, serious] of hospital)
    expect(scald(celsius(fahrenheit) + 0.05)?.seriousSeconds).toBe(serious);
});

test("scald never gives a longer time for a hotter liquor", () => {
  let before = Number.POSITIVE_INFINITY;
  for (let c = 45; c <= 100; c += 0.1) {
    const now = scald(c)?.seriousSeconds ?? Number.POSITIVE_INFINITY;
    expect(now).toBeLessThanOrEqual(before);
    before = now;
  }
  expect(before).toBe(1);
});
