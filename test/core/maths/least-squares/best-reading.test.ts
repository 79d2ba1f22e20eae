import { describe, expect, test } from "vitest";
import { bestReading, information } from "../../../../src/core/maths/least-squares/best-reading.js";

/** Slopes of P (1 - exp(-k t)) by P and k. */
const rise = (plateau: number, rate: number) => (t: number) => [
  1 - Math.exp(-rate * t),
  plateau * t * Math.exp(-rate * t),
];

/** Box and Lucas (1959): one reading at the longest time, the other here. */
const boxLucas = (rate: number, longest: number): number =>
  1 / rate - (longest * Math.exp(-rate * longest)) / (1 - Math.exp(-rate * longest));

describe("the best two readings of a first-order rise", () => {
  for (const [rate, longest] of [
    [0.012, 300],
    [0.03, 180],
    [0.004, 240],
  ] as const)
    test(`rate ${rate} /s, up to ${longest} s: the longest time, and the one of Box and Lucas`, () => {
      const slopes = rise(2, rate);
      const next = bestReading(slopes, [longest], 0, longest);
      expect(Math.abs(next / boxLucas(rate, longest) - 1)).toBeLessThan(1e-6);
      // By brute force: no pair of times on a fine grid holds more.
      const found = information(slopes, [next, longest]);
      let most = 0;
      for (let i = 1; i <= 600; i++)
        for (let j = i; j <= 600; j++)
          most = Math.max(most, information(slopes, [(i * longest) / 600, (j * longest) / 600]));
      expect(found).toBeGreaterThanOrEqual(most * (1 - 1e-6));
      expect(bestReading(slopes, [next], 0, longest)).toBeCloseTo(longest, 6);
    });

  test("they do not depend on the plateau", () => {
    const at = (plateau: number): number => bestReading(rise(plateau, 0.012), [300], 0, 300);
    expect(at(50) / at(0.1)).toBeCloseTo(1, 6);
  });

  test("computed points: 59.8688 s of 180 s at 0.012 /s, and so on", () => {
    for (const [rate, longest, expected] of [
      [0.012, 180, 59.8688],
      [0.03, 120, 29.9624],
      [0.05, 300, 19.9999],
    ] as const)
      expect(Math.abs(bestReading(rise(1, rate), [longest], 0, longest) / expected - 1)).toBeLessThan(1e-5);
  });
});

test("the points of a second-order rise a k t/(1 + k t) up to 180 s", () => {
  for (const [rate, expected] of [
    [0.005, 62.069],
    [0.012, 43.2692],
    [0.03, 24.3243],
  ] as const) {
    const slopes = (t: number) => [(rate * t) / (1 + rate * t), t / (1 + rate * t) ** 2];
    expect(Math.abs(bestReading(slopes, [180], 0, 180) / expected - 1)).toBeLessThan(1e-5);
  }
});
