import { expect, test } from "vitest";
import { makeUp } from "../../src/core/bath/make-up/make-up.js";
import {
  alligation,
  dilutedConcentration,
  dilutedVolume,
  weakerToAdd,
} from "../../src/core/bath/make-up/mixing.js";
import { dilutionInWords } from "../../src/core/quantity/dye/dilution.js";

test("0.850 L of 5.00 M in 1.80 L is 2.36 M", () => {
  // source: chemistry2e
  expect(dilutedConcentration(5, 0.85, 1.8)).toBeCloseTo(2.36, 2);
});

test("11 mL of 0.45 M come to 0.12 M in 41 mL", () => {
  // source: chemistry2e
  expect(Math.round(dilutedVolume(0.45, 11, 0.12))).toBe(41);
  expect(dilutedVolume(0.45, 11, 0.12)).toBeCloseTo(41.25, 12);
});

test("300 mL of 70 % take 225 mL of water to make 40 %", () => {
  // source: pharmaceuticalCalculations
  expect(weakerToAdd({ volume: 300, strength: 70, weaker: 0, target: 40 })).toBe(225);
  const parts = alligation({ weaker: 0, stronger: 70, target: 40, total: 525 })!;
  expect(parts.weaker).toBeCloseTo(225, 10);
  expect(parts.stronger).toBeCloseTo(300, 10);
});

test("300 mL of 70 % take 221.05 mL of 95 %, where a published page printed 138.46", () => {
  // computed, the printed value is a misprint
  const parts = alligation({ weaker: 0, stronger: 95, target: 70, total: 300 })!;
  expect(parts.stronger).toBeCloseTo(221.05, 2);
});

test("20 mL of 70 % are 12 mL of 50 % and 8 mL of 100 %", () => {
  // source: tutoringPages (2023)
  expect(alligation({ weaker: 50, stronger: 100, target: 70, total: 20 })).toEqual({
    weaker: 12,
    stronger: 8,
  });
});

test.each([
  [6, 600, 5400],
  [10, 1000, 9000],
  [20, 2000, 18000],
  [30, 3000, 27000],
])(
  "a bath of %d L at 1:9 by volume takes %d mL of concentrate and %d mL of water",
  (volumeHotL, concentrateMl, waterMl) => {
    // common practice, no source
    const dilution = { kind: "liquid", fraction: 1 / 10 } as const;
    const made = makeUp({ volumeHotL, celsius: 20, roomCelsius: 20, dilution });
    expect(made).toEqual({ fraction: 0.1, volumeHotL, volumeColdL: volumeHotL, concentrateMl, waterMl });
    expect(dilutionInWords(dilution)).toBe("1 part dye + 9 parts water = 10 % by volume");
  },
);
