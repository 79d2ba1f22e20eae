import { expect, test } from "vitest";
import { solveLeastSquares } from "../../src/core/maths/least-squares/linear-least-squares.js";
import { normalCdf } from "../../src/core/maths/sampling/normal-cdf.js";
import { breaksRule, type RunRuleName, runRules } from "../../src/core/quality/run-rules.js";

const shifts = [0, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.4, 2.6, 2.8, 3];
// source: champWoodall1987 Table 1: mean number of readings until the first alarm, by the shift in σ
const printed: Readonly<Record<RunRuleName, readonly number[]>> = {
  beyond: [
    370.4, 308.43, 200.08, 119.67, 71.55, 43.89, 27.82, 18.25, 12.38, 8.69, 6.3, 4.72, 3.65, 2.9, 2.38, 2.0,
  ],
  two: [
    225.44, 177.56, 104.46, 57.92, 33.12, 20.01, 12.81, 8.69, 6.21, 4.66, 3.65, 2.96, 2.48, 2.13, 1.87, 1.68,
  ],
  four: [
    166.05, 120.7, 63.88, 33.99, 19.78, 12.66, 8.84, 6.62, 5.24, 4.33, 3.68, 3.18, 2.78, 2.43, 2.14, 1.89,
  ],
  eight: [
    152.73, 110.52, 59.76, 33.64, 21.07, 14.58, 10.9, 8.6, 7.03, 5.85, 4.89, 4.08, 3.38, 2.81, 2.35, 1.99,
  ],
};

/** Deviations that stand for all between two bounds, with those bounds [σ]. */
const zones = [
  [Number.NEGATIVE_INFINITY, -3, -3.5],
  [-3, -2, -2.5],
  [-2, -1, -1.5],
  [-1, 0, -0.5],
  [0, 1, 0.5],
  [1, 2, 1.5],
  [2, 3, 2.5],
  [3, Number.POSITIVE_INFINITY, 3.5],
] as const;

/**
 * Mean number of readings until a rule, or one reading beyond 3 σ, gives an alarm: exact, over all states that the last
 * readings can be in. Readings that the rule takes for alike are one state.
 */
function runLength(rule: RunRuleName, shift: number): number {
  const { of, beyondSigma } = runRules[rule];
  const level = (value: number): number =>
    Math.abs(value) > beyondSigma ? Math.sign(value) * (beyondSigma + 0.5) : 0;
  const states = new Map<string, number>([["", 0]]);
  const histories: number[][] = [[]];
  const next: [number, number][][] = [];
  for (let at = 0; at < histories.length; at++) {
    const moves: [number, number][] = [];
    for (const [from, to, deviation] of zones) {
      const now = [...histories[at]!, deviation];
      if (breaksRule(now, "beyond") || breaksRule(now, rule)) continue;
      const kept = [...histories[at]!, level(deviation)].slice(-of + 1 || 1);
      const key = kept.join();
      if (!states.has(key)) {
        states.set(key, histories.length);
        histories.push(kept);
      }
      moves.push([states.get(key)!, normalCdf(to - shift) - normalCdf(from - shift)]);
    }
    next.push(moves);
  }
  // L = 1 + P L
  const matrix = next.map((moves, i) => {
    const row = next.map((_moves, j) => (i === j ? 1 : 0));
    for (const [to, share] of moves) row[to]! -= share;
    return row;
  });
  return solveLeastSquares(
    matrix,
    next.map(() => 1),
  )!.x[0]!;
}

test.each(Object.keys(printed) as RunRuleName[])(
  "breaksRule gives the printed mean number of readings until an alarm: %s",
  (rule) => {
    shifts.forEach((shift, i) => {
      expect(Math.abs(runLength(rule, shift) - printed[rule][i]!)).toBeLessThanOrEqual(0.01);
    });
  },
);
