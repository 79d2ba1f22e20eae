import { solveLeastSquares, unitStandardErrors } from "../../maths/least-squares/linear-least-squares.js";
import { findRoot } from "../../maths/root.js";
import type { LawName } from "../../model/batch.js";
import { lawLogSlope, lawUptake, uptakeLaws } from "../law/laws.js";

/** One reading: how much dye a part had taken up after a time. Any unit of uptake, the same for all. */
export interface UptakePoint {
  readonly seconds: number;
  readonly uptake: number;
  /** Its row in the table, for messages. */
  readonly row?: number;
}

/** What least squares finds for one law; a rate that the points leave open says on which side. */
export type LawConstants =
  | {
      readonly determined: true;
      readonly plateau: number;
      readonly ratePerSecond: number;
      readonly plateauError: number;
      /** Absent where the rate is held. */
      readonly rateError: number | undefined;
      readonly residualSum: number;
    }
  | {
      readonly determined: false;
      readonly limit: "still-rising" | "already-level";
      readonly residualSum: number;
    };

/** Grid of the search over ln k, steps of this size. */
const gridStep = 0.2;
/** k t at the longest time below which a law is its short-time limit. */
const slowest = 1e-4;

/**
 * The plateau P and the rate k with the smallest sum of squares of uptake - P g(k t), for one law.
 *
 * For each k the best P is linear, P = sum(y g)/sum(g²), so only ln k is searched: a grid over every rate the
 * times can tell apart, then the zero of the slope dS/d(ln k) = -2 P sum(r g'), which is exact to rounding.
 * The parabolic law has one constant, P sqrt(k): k is held at 1/(longest time), so P is the fitted uptake at
 * the longest time. Standard errors from the slopes at the minimum, s² = S/(n - parameters).
 * Needs two different times above 0.
 * @source golubPereyra1973
 * @example
 * fitLaw("second-order", [10, 20, 40].map((seconds) => ({ seconds, uptake: (3 * seconds) / (20 + seconds) }))).plateau // => 3.00000000
 */
export function fitLaw(law: LawName, points: readonly UptakePoint[]): LawConstants {
  const longest = points.reduce((most, { seconds }) => Math.max(most, seconds), 0);
  if (!uptakeLaws[law].plateau) return constantsAt(law, points, 1 / longest);
  const shortest = points.reduce((least, { seconds: t }) => (t > 0 ? Math.min(least, t) : least), longest);
  const low = Math.log(slowest / longest);
  const count = Math.ceil((Math.log(uptakeLaws[law].settledAt / shortest) - low) / gridStep);
  const grid = Array.from({ length: count + 1 }, (_, i) => low + i * gridStep);
  const sums = grid.map((logRate) => reduced(law, points, Math.exp(logRate)).sum);
  let best: { logRate: number; sum: number } | undefined;
  for (let i = 1; i < count; i += 1) {
    if (!(sums[i]! <= sums[i - 1]! && sums[i]! <= sums[i + 1]!)) continue;
    const slope = (logRate: number): number => reduced(law, points, Math.exp(logRate)).slope;
    const logRate = findRoot(slope, { low: grid[i - 1]!, high: grid[i + 1]! }) ?? grid[i]!;
    const { sum } = reduced(law, points, Math.exp(logRate));
    if (best === undefined || sum < best.sum) best = { logRate, sum };
  }
  const [slowSum, fastSum] = [sums[0]!, sums[count]!];
  const limitSum = Math.min(slowSum, fastSum);
  if (best !== undefined && best.sum < limitSum * (1 - 1e-9))
    return constantsAt(law, points, Math.exp(best.logRate));
  return {
    determined: false,
    limit: slowSum <= fastSum ? "still-rising" : "already-level",
    residualSum: limitSum,
  };
}

/** The best plateau for a rate, the sum it leaves, and half the downward slope of that sum over ln k. */
function reduced(law: LawName, points: readonly UptakePoint[], rate: number) {
  let [product, square] = [0, 0];
  for (const { seconds, uptake } of points) {
    const g = lawUptake(law, rate * seconds);
    product += uptake * g;
    square += g * g;
  }
  const plateau = product / square;
  let [sum, slope] = [0, 0];
  for (const { seconds, uptake } of points) {
    const residual = uptake - plateau * lawUptake(law, rate * seconds);
    sum += residual * residual;
    slope += plateau * residual * lawLogSlope(law, rate * seconds);
  }
  return { plateau, sum, slope };
}

function constantsAt(law: LawName, points: readonly UptakePoint[], ratePerSecond: number): LawConstants {
  const { plateau, sum } = reduced(law, points, ratePerSecond);
  const held = !uptakeLaws[law].plateau;
  const slopes = points.map(({ seconds }) => {
    const x = ratePerSecond * seconds;
    return held ? [lawUptake(law, x)] : [lawUptake(law, x), plateau * lawLogSlope(law, x)];
  });
  const free = slopes.length - slopes[0]!.length;
  const deviation = Math.sqrt(sum / free);
  const r = solveLeastSquares(
    slopes,
    points.map(() => 0),
  )?.r;
  const errors = r === undefined ? [] : unitStandardErrors(r).map((value) => value * deviation);
  return {
    determined: true,
    plateau,
    ratePerSecond,
    plateauError: errors[0] ?? Number.POSITIVE_INFINITY,
    rateError: held ? undefined : ratePerSecond * (errors[1] ?? Number.POSITIVE_INFINITY),
    residualSum: sum,
  };
}
