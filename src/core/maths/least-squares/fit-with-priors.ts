import { numericJacobian } from "./jacobian.js";
import { solveLeastSquares, unitStandardErrorOf, unitStandardErrors } from "./linear-least-squares.js";

/** Parameters in units of their own standard deviation before the data, and what the data then leave. */
export interface PriorFit {
  readonly parameters: readonly number[];
  /** 1 where the data say nothing. */
  readonly standardErrors: readonly number[];
  /** Standard error of what answers to the parameters with these slopes. */
  readonly standardErrorOf: (slopes: readonly number[]) => number;
  /** Sum of the squared residuals of the data over their number; undefined without data. */
  readonly meanSquare: number | undefined;
}

const mostSteps = 8;
const mostHalvings = 6;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value * value, 0);

/**
 * Parameters z, each 0 ± 1 before the data, that make Σ r(z)² + Σ z² smallest, by Gauss-Newton steps that are halved
 * where they do not help. Standard errors are roots of the diagonal of (J'J + I)^-1.
 *
 * `residuals` in units of their standard deviations. Valid near the minimum, where residuals bend little.
 * @source gelman2013 a prior as further data
 * @example
 * fitWithPriors((z) => [(z[0] - 1) / 0.1], 1).standardErrors[0] // => 0.0995
 */
export function fitWithPriors(
  residuals: (z: readonly number[]) => readonly number[],
  count: number,
): PriorFit {
  const all = (z: readonly number[]): number[] => [...residuals(z), ...z];
  const slopes = (z: readonly number[]): number[][] =>
    numericJacobian(
      all,
      z,
      Array.from({ length: count }, () => 1),
    );
  let z = Array.from({ length: count }, () => 0);
  let r = all(z);
  let jacobian = slopes(z);
  for (let step = 0; step < mostSteps; step++) {
    const by = solveLeastSquares(
      jacobian,
      r.map((value) => -value),
    )!.x;
    let moved = false;
    for (let half = 0; half < mostHalvings && !moved; half++) {
      const next = z.map((value, i) => value + by[i]! / 2 ** half);
      const there = all(next);
      if (!(sum(there) < sum(r))) continue;
      [z, r, moved] = [next, there, true];
    }
    if (!moved) break;
    jacobian = slopes(z);
    if (by.every((value) => Math.abs(value) < 1e-3)) break;
  }
  const { r: triangle } = solveLeastSquares(jacobian, r)!;
  const data = r.slice(0, r.length - count);
  return {
    parameters: z,
    standardErrors: unitStandardErrors(triangle),
    standardErrorOf: (slopes) => unitStandardErrorOf(triangle, slopes),
    meanSquare: data.length === 0 ? undefined : sum(data) / data.length,
  };
}
