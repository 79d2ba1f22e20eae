import { done, error, type Fault, failed, type Outcome, warning } from "../../fault.js";
import { numericJacobian } from "../../maths/least-squares/jacobian.js";
import { fitNonlinear } from "../../maths/least-squares/nonlinear-least-squares.js";
import { halfWidth95 } from "../../maths/sampling/half-width-95.js";
import { deviationOfFactor } from "../../maths/sampling/log-normal.js";
import { type AssumedFigure, defaults } from "../../model/defaults.js";
import type { Evidence } from "./forms.js";
import { evidenceFault, type Observation, observationOf } from "./observation.js";

/** A quantity known to a factor: `factor` is one standard deviation, so 1.3 is +30 % or -23 %. */
export interface Estimate {
  readonly value: number;
  readonly factor: number;
  readonly interval95: readonly [number, number];
  /** Variance left of the assumed figure's own: 1 where the evidence tells nothing of it, near 0 where it tells all. */
  readonly assumedShare: number;
}

export interface Agreement {
  /** Of the list of evidence; null for the assumed figure itself. */
  readonly index: number | null;
  readonly kind: Observation["kind"];
  /** What was seen, and what the reconciled figures predict, in the unit of the kind. */
  readonly observed: number;
  readonly expected: number;
  /** How far it lies from what all the others say, in standard deviations of that difference. */
  readonly standardised: number;
  readonly disagrees: boolean;
}

export interface Reconciled {
  readonly uptakePerDm2: Estimate;
  readonly dragOutMlPerDm2: Estimate;
  readonly observations: readonly Agreement[];
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Factor by which standard deviations were widened since the evidence scatters more than it should; 1 where not. */
  readonly widened: number;
}

/** An assumed figure, with the standard deviation of its logarithm. */
export interface Assumed {
  readonly value: number;
  readonly deviation: number;
  /** What messages call it, where it is not merely assumed. */
  readonly said?: string;
}

/** Evidence further than this from what all the others say disagrees with them [standard deviations]. */
const mostDeviations = 2;

const known = ({ value, factor }: AssumedFigure): Assumed => ({
  value,
  deviation: deviationOfFactor(factor),
});

/** κ in mL of concentrate per dm², drag-out in mL per dm². */
export const usualAssumed: { readonly uptakePerDm2: Assumed; readonly dragOutMlPerDm2: Assumed } = {
  uptakePerDm2: known(defaults.dye.uptakeMlPerDm2),
  dragOutMlPerDm2: known(defaults.handling.dragOutMlPerDm2),
};

/**
 * κ and drag-out that agree best with all evidence and with the assumed figures.
 *
 * Weighted least squares over ln κ and ln δ: both are positive and known to a factor. A relative deviation r of
 * evidence is a deviation sqrt(ln(1 + r²)) of the logarithm. Amounts of dye per area are compared by their logarithms,
 * strengths as they are. Where χ² is over its degrees of freedom, deviations are
 * widened by the root of their ratio.
 * @source birge1932 widening
 */
export function reconcile(evidence: readonly Evidence[], assumed = usualAssumed): Outcome<Reconciled> {
  const faults = evidence.flatMap((one, index) => evidenceFault(one, index) ?? []);
  if (faults.length > 0) return { ok: false, faults };
  const priors = [assumed.uptakePerDm2, assumed.dragOutMlPerDm2];
  const observations: Observation[] = [
    ...evidence.map(observationOf),
    ...priors.map(
      ({ value, deviation, said }, j): Observation => ({
        index: null,
        kind: j === 0 ? "assumed-uptake" : "assumed-drag-out",
        said: said ?? (j === 0 ? "the assumed uptake" : "the assumed drag-out"),
        observed: value,
        deviation,
        scale: "log",
        expected: (kappa, dragOut) => (j === 0 ? kappa : dragOut),
      }),
    ),
  ];
  const expected = (p: readonly number[]): number[] =>
    observations.map((one) => one.expected(Math.exp(p[0]!), Math.exp(p[1]!)));
  const residuals = (p: readonly number[]): number[] =>
    expected(p).map((value, i) => weighed(observations[i]!, value));
  const start = startOf(residuals, priors);
  if (start === undefined) return failed(drySlower(evidence));
  const { parameters, residualSum, converged } = fitNonlinear({ residuals, start, size: [0.1, 0.1] });
  if (!converged) return failed(unfit());
  const jacobian = numericJacobian(residuals, parameters, [0.1, 0.1]);
  const covariance = inverseOfSquare(jacobian);
  const degreesOfFreedom = evidence.length;
  const widened = degreesOfFreedom > 0 ? Math.max(1, Math.sqrt(residualSum / degreesOfFreedom)) : 1;
  const estimate = (j: 0 | 1): Estimate => {
    const deviation = Math.sqrt(covariance[j][j]) * widened;
    const middle = parameters[j]!;
    return {
      value: Math.exp(middle),
      factor: Math.exp(deviation),
      interval95: [Math.exp(middle - halfWidth95 * deviation), Math.exp(middle + halfWidth95 * deviation)],
      assumedShare: covariance[j][j] / priors[j]!.deviation ** 2,
    };
  };
  const fitted = expected(parameters);
  const seen = residuals(parameters);
  const agreements = observations.map(({ index, kind, observed }, i): Agreement => {
    const standardised = seen[i]! / Math.sqrt(Math.max(1e-12, 1 - leverage(jacobian[i]!, covariance)));
    return {
      index,
      kind,
      observed,
      expected: fitted[i]!,
      standardised,
      disagrees: Math.abs(standardised) > mostDeviations,
    };
  });
  return done(
    {
      uptakePerDm2: estimate(0),
      dragOutMlPerDm2: estimate(1),
      observations: agreements,
      chiSquare: residualSum,
      degreesOfFreedom,
      widened,
    },
    agreements.flatMap((one, i) => (one.disagrees ? disagreement(one, observations[i]!.said) : [])),
  );
}

/** Observed less expected, in standard deviations. */
const weighed = (one: Observation, expected: number): number =>
  (one.scale === "log" ? Math.log(one.observed / expected) : one.observed - expected) / one.deviation;

/** The assumed figures; with less drag-out where a bath would run dry under them. */
function startOf(
  residuals: (p: readonly number[]) => readonly number[],
  priors: readonly Assumed[],
): readonly number[] | undefined {
  for (const less of [1, 0.1, 0.01, 1e-3]) {
    const start = [Math.log(priors[0]!.value), Math.log(priors[1]!.value * less)];
    if (residuals(start).every(Number.isFinite)) return start;
  }
  return undefined;
}

type Square = readonly [readonly [number, number], readonly [number, number]];

/** (J'J)⁻¹ of two columns. */
function inverseOfSquare(jacobian: readonly (readonly number[])[]): Square {
  const sum = (i: 0 | 1, j: 0 | 1): number => jacobian.reduce((total, row) => total + row[i]! * row[j]!, 0);
  const [a, b, d] = [sum(0, 0), sum(0, 1), sum(1, 1)];
  const determinant = a * d - b * b;
  return [
    [d / determinant, -b / determinant],
    [-b / determinant, a / determinant],
  ];
}

/** Share of an observation in its own fitted value. */
const leverage = (row: readonly number[], [[a, b], [, d]]: Square): number =>
  row[0]! ** 2 * a + 2 * row[0]! * row[1]! * b + row[1]! ** 2 * d;

const disagreement = (
  { index, kind, observed, expected, standardised }: Agreement,
  said: string = kind,
): Fault =>
  warning(
    "evidence-disagrees",
    [index ?? kind],
    `${said} says ${observed.toPrecision(3)}, all evidence together ${expected.toPrecision(3)}: ${Math.abs(standardised).toFixed(1)} standard deviations from the rest`,
    index === null
      ? "check units: mL of concentrate or g of powder per dm²"
      : "check this figure, or leave it out",
  );

const drySlower = (evidence: readonly Evidence[]): Fault =>
  error(
    "evidence-dry",
    [evidence.findIndex(({ kind }) => kind === "slower")],
    "so much area and evaporation would leave the bath dry",
    "write how it was refilled: refill: water",
  );

const unfit = (): Fault =>
  error("evidence-open", [], "the evidence cannot be reconciled", "leave one out and try again");
