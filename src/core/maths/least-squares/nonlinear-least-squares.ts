import { numericJacobian } from "./jacobian.js";
import { type Matrix, solveLeastSquares, unitStandardErrors } from "./linear-least-squares.js";
import { norm } from "./norm.js";

export interface NonlinearProblem {
  /** Data less model, or model less data; a value that is not finite marks parameters that are not allowed. */
  readonly residuals: (p: readonly number[]) => readonly number[];
  /** Slopes of the residuals; numeric where absent. */
  readonly jacobian?: (p: readonly number[]) => Matrix;
  readonly start: readonly number[];
  /** Usual size of each parameter, for the step of numeric slopes; by default a thousandth of its start. */
  readonly size?: readonly number[];
  readonly maximumSteps?: number;
}

export interface NonlinearFit {
  readonly parameters: readonly number[];
  /** Undefined without degrees of freedom, or where the data do not tell the parameters apart. */
  readonly standardErrors: readonly number[] | undefined;
  readonly residualSum: number;
  readonly degreesOfFreedom: number;
  readonly steps: number;
  /** The residuals are at right angles to every slope, and the slopes tell the parameters apart. */
  readonly converged: boolean;
}

interface State {
  readonly p: readonly number[];
  readonly r: readonly number[];
  readonly sum: number;
}

const sumOfSquares = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value * value, 0);

/**
 * The parameters with the smallest sum of squared residuals.
 *
 * Damped Gauss-Newton steps (Levenberg-Marquardt) with the damping scaled to each parameter's slope, and a
 * second-order correction along the step; closed by undamped steps, since the sum alone fixes a parameter to
 * half the digits only. Standard errors are s sqrt(diag (J'J)^-1), s² = sum / (n - p).
 * It finds the minimum in whose valley it starts: from a start that may be off by powers of ten use
 * `fitFromPoorStart`.
 * @source more1978 scaling
 * @source transtrumSethna2012 second-order correction
 * @example
 * fitNonlinear({ start: [1, 1], residuals: (p) => [1, 2, 3].map((x) => p[0] * x ** p[1] - 3 * x ** 2) }).parameters[1] // => 2.000000000000
 */
export function fitNonlinear(problem: NonlinearProblem): NonlinearFit {
  const size = problem.size ?? problem.start.map((value) => Math.abs(value) / 1000 || 1e-3);
  const slopes = problem.jacobian ?? ((p) => numericJacobian(problem.residuals, p, size));
  const evaluate = (p: readonly number[]): State => {
    const r = problem.residuals(p);
    return { p, r, sum: sumOfSquares(r) };
  };
  const maximumSteps = problem.maximumSteps ?? 2000;
  let state = evaluate(problem.start);
  let jacobian = slopes(state.p);
  let scale = columnNorms(jacobian);
  let damping = 1e-3;
  let raise = 2;
  let steps = 0;
  for (; steps < maximumSteps && Number.isFinite(state.sum); steps += 1) {
    const step = dampedStep(problem.residuals, state, jacobian, scale, damping);
    const next = step === undefined ? undefined : evaluate(state.p.map((value, j) => value + step[j]!));
    if (step !== undefined && isSmall(step, state.p)) break;
    if (next !== undefined && next.sum < state.sum) {
      const gain = (state.sum - next.sum) / state.sum;
      state = next;
      jacobian = slopes(state.p);
      scale = columnNorms(jacobian).map((value, j) => Math.max(value, scale[j]! * 0.5));
      damping = Math.max(damping / 5, 1e-14);
      raise = 2;
      if (gain < 1e-15 && damping < 1e-10) break;
    } else {
      damping *= raise;
      raise *= 2;
      if (damping > 1e30) break;
    }
  }
  state = closed(state, evaluate, slopes);
  return summary(state, slopes(state.p), steps);
}

const columnNorms = (jacobian: Matrix): number[] =>
  (jacobian[0] ?? []).map((_, j) => norm(jacobian.map((row) => row[j]!)));

const isSmall = (step: readonly number[], p: readonly number[]): boolean =>
  step.every((value, j) => Math.abs(value) <= 1e-13 * Math.abs(p[j]!));

/** The damped step and half its second-order correction, where that is small beside it. */
function dampedStep(
  residuals: NonlinearProblem["residuals"],
  state: State,
  jacobian: Matrix,
  scale: readonly number[],
  damping: number,
): readonly number[] | undefined {
  const root = Math.sqrt(damping);
  const matrix = [
    ...jacobian,
    ...scale.map((value, j) => scale.map((_, k) => (j === k ? root * (value || 1) : 0))),
  ];
  const zeros = scale.map(() => 0);
  const solve = (right: readonly number[]) =>
    solveLeastSquares(matrix, [...right.map((v) => -v), ...zeros])?.x;
  const step = solve(state.r);
  if (step === undefined) return undefined;
  const h = 0.1;
  const ahead = residuals(state.p.map((value, j) => value + h * step[j]!));
  const curvature = ahead.map((value, i) => {
    const along = jacobian[i]!.reduce((sum, slope, j) => sum + slope * step[j]!, 0);
    return (2 / h) * ((value - state.r[i]!) / h - along);
  });
  const bend = curvature.every(Number.isFinite) ? solve(curvature) : undefined;
  if (bend === undefined) return step;
  const length = (v: readonly number[]): number => norm(v.map((value, j) => value * scale[j]!));
  return 2 * length(bend) <= 0.75 * length(step) ? step.map((value, j) => value + bend[j]! / 2) : step;
}

/** Undamped steps from close by, for as long as they get shorter and the sum stays the same to rounding. */
function closed(
  from: State,
  evaluate: (p: readonly number[]) => State,
  slopes: (p: readonly number[]) => Matrix,
): State {
  let state = from;
  let before = Number.POSITIVE_INFINITY;
  for (let count = 0; count < 20 && Number.isFinite(state.sum); count += 1) {
    const jacobian = slopes(state.p);
    const step = solveLeastSquares(
      jacobian,
      state.r.map((value) => -value),
    )?.x;
    if (step === undefined) return state;
    const scale = columnNorms(jacobian);
    const length = norm(step.map((value, j) => value * scale[j]!));
    const next = evaluate(state.p.map((value, j) => value + step[j]!));
    if (!(length < before / 2 && next.sum <= state.sum * (1 + 1e-9))) return state;
    state = next;
    before = length;
  }
  return state;
}

function summary(state: State, jacobian: Matrix, steps: number): NonlinearFit {
  const degreesOfFreedom = state.r.length - state.p.length;
  const linear = solveLeastSquares(jacobian, state.r);
  const size = norm(state.r);
  const steepest = columnNorms(jacobian).map((length, j) => {
    const slope = jacobian.reduce((sum, row, i) => sum + row[j]! * state.r[i]!, 0);
    return length * size === 0 ? 0 : Math.abs(slope) / (length * size);
  });
  const standardErrors =
    linear === undefined || degreesOfFreedom < 1
      ? undefined
      : unitStandardErrors(linear.r).map((value) => value * Math.sqrt(state.sum / degreesOfFreedom));
  const still = steepest.every((cosine) => cosine < 1e-6);
  return {
    parameters: state.p,
    standardErrors,
    residualSum: state.sum,
    degreesOfFreedom,
    steps,
    converged: linear !== undefined && (still || isSmall(linear.x, state.p)),
  };
}
