/** Residuals of a few parameters, each kept between its limits. */
export interface BoundedProblem {
  /** Writes the residuals at p into `out`. */
  readonly residuals: (p: Float64Array, out: Float64Array) => void;
  /** How many residuals there are. */
  readonly count: number;
  readonly start: ArrayLike<number>;
  readonly low: ArrayLike<number>;
  readonly high: ArrayLike<number>;
  /** Sum of squares at which nothing is left to gain; 0 by default. */
  readonly enough?: number;
  /** The search ends where a step gains less than this share of the sum; 1e-10 by default. */
  readonly leastGain?: number;
}

export interface BoundedFit {
  readonly parameters: Float64Array;
  readonly residualSum: number;
}

const mostSteps = 80;
/** Step of the slopes, relative to a parameter of size 1. */
const nudge = 1e-6;

const sumOfSquares = (r: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < r.length; i++) sum += r[i]! * r[i]!;
  return sum;
};

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** d of (J'J + λ diag) d = -J'r over the free parameters, by elimination; 0 for the others. */
function dampedStep(
  normal: readonly Float64Array[],
  gradient: Float64Array,
  free: readonly boolean[],
  damping: number,
): Float64Array {
  const at = free.flatMap((is, j) => (is ? [j] : []));
  const work = at.map((j) => [
    ...at.map((k) => normal[j]![k]! * (j === k ? 1 + damping : 1) + (j === k ? 1e-12 : 0)),
    -gradient[j]!,
  ]);
  const n = at.length;
  for (let k = 0; k < n; k++)
    for (let i = k + 1; i < n; i++) {
      const factor = work[i]![k]! / work[k]![k]!;
      for (let j = k; j <= n; j++) work[i]![j]! -= factor * work[k]![j]!;
    }
  const step = new Float64Array(gradient.length);
  for (let i = n - 1; i >= 0; i--) {
    let value = work[i]![n]!;
    for (let j = i + 1; j < n; j++) value -= work[i]![j]! * step[at[j]!]!;
    step[at[i]!] = value / work[i]![i]!;
  }
  return step;
}

/**
 * The parameters between their limits with the smallest sum of squared residuals, in whose valley the start lies.
 *
 * Damped Gauss-Newton steps (Levenberg-Marquardt), cut at the limits; a parameter at a limit is held there while the sum
 * falls beyond it. For a handful of parameters.
 * @source more1978 scaling
 * @example
 * boundedLeastSquares({ residuals: (p, out) => { out[0] = p[0] - 3; out[1] = p[0] * p[1] - 4; }, count: 2, start: [1, 1], low: [0, 0], high: [2, 5] }).parameters[1] // => 2.000000
 */
export function boundedLeastSquares(problem: BoundedProblem): BoundedFit {
  const { residuals, count, low, high, enough = 0, leastGain = 1e-10 } = problem;
  const n = low.length;
  let p = Float64Array.from({ length: n }, (_, j) => clamp(problem.start[j]!, low[j]!, high[j]!));
  let r = new Float64Array(count);
  residuals(p, r);
  let sum = sumOfSquares(r);
  let next = new Float64Array(count);
  const slopes = p.map(() => 0);
  const columns = Array.from({ length: n }, () => new Float64Array(count));
  const normal = Array.from({ length: n }, () => new Float64Array(n));
  let damping = 1e-3;
  for (let steps = 0; steps < mostSteps && sum > enough; steps++) {
    for (let j = 0; j < n; j++) {
      const h = p[j]! + nudge <= high[j]! ? nudge : -nudge;
      const from = p[j]!;
      p[j] = from + h;
      residuals(p, next);
      p[j] = from;
      for (let i = 0; i < count; i++) columns[j]![i] = (next[i]! - r[i]!) / h;
    }
    for (let j = 0; j < n; j++) {
      for (let k = 0; k <= j; k++) {
        let dot = 0;
        for (let i = 0; i < count; i++) dot += columns[j]![i]! * columns[k]![i]!;
        normal[j]![k] = dot;
        normal[k]![j] = dot;
      }
      let along = 0;
      for (let i = 0; i < count; i++) along += columns[j]![i]! * r[i]!;
      slopes[j] = along;
    }
    const free = Array.from(p, (value, j) =>
      slopes[j]! > 0 ? value > low[j]! : slopes[j]! < 0 ? value < high[j]! : false,
    );
    if (!free.includes(true)) break;
    let gained = -1;
    while (gained < 0 && damping < 1e9) {
      const step = dampedStep(normal, slopes, free, damping);
      const trial = p.map((value, j) => clamp(value + step[j]!, low[j]!, high[j]!));
      residuals(trial, next);
      const trialSum = sumOfSquares(next);
      if (trialSum < sum) {
        gained = sum - trialSum;
        [p, sum] = [trial, trialSum];
        [r, next] = [next, r];
        damping = Math.max(damping / 8, 1e-12);
      } else damping *= 5;
    }
    if (gained < leastGain * sum + 1e-16) break;
  }
  return { parameters: p, residualSum: sum };
}
