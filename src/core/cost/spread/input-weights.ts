import { quantile } from "d3-array";
import { solveLeastSquares } from "../../maths/least-squares/linear-least-squares.js";
import { ranksOf } from "../../maths/sampling/ranks.js";
import type { UncertainInput } from "./uncertain-input.js";

/** How much one uncertain input moves the cost. */
export interface InputWeight {
  readonly path: readonly (string | number)[];
  readonly assumed: boolean;
  /** Share of the variation of the cost's ranks that goes with this input, 0..1. */
  readonly share: number;
  /** By how much the cost rises, on a straight line, when the input goes from its P10 to its P90. */
  readonly swing: number;
}

/** Values less their mean in units of their deviation; the deviation is 0 where nothing varies. */
function standardised(values: readonly number[]): { deviation: number; scores: number[] } {
  const count = Math.max(1, values.length);
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const deviation = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / count);
  return { deviation, scores: values.map((value) => (deviation > 0 ? (value - mean) / deviation : 0)) };
}

/** Coefficient of each column for a standardised result; 0 for one that does not vary, or where none can be told. */
function coefficients(columns: readonly (readonly number[])[], result: readonly number[]): number[] {
  const varying = columns.flatMap((column, i) => (column.some((score) => score !== 0) ? [i] : []));
  const rows = result.map((_, draw) => varying.map((i) => columns[i]![draw]!));
  const fit = varying.length < result.length ? solveLeastSquares(rows, result) : undefined;
  return columns.map((_, i) => fit?.x[varying.indexOf(i)] ?? 0);
}

/**
 * Ranks inputs by how much they move a cost: the squares of the coefficients of a linear regression of the
 * cost's ranks on the inputs' ranks, all standardised. `columns[input][draw]`, `costs[draw]`; draws without a
 * cost are left out. Equal shares stay in the order of the inputs.
 *
 * Valid for independent inputs and a cost that rises or falls with each all along; shares then add up to at
 * most about 1, and one below 4/draws cannot be told from none.
 * @source imanConover1979
 */
export function inputWeights(
  inputs: readonly Pick<UncertainInput, "path" | "assumed">[],
  columns: readonly (readonly number[])[],
  costs: readonly (number | null)[],
): InputWeight[] {
  const known = costs.flatMap((cost, draw) => (cost === null ? [] : [draw]));
  const paid = known.map((draw) => costs[draw]!);
  const drawn = columns.map((column) => known.map((draw) => column[draw]!));
  const cost = standardised(paid);
  const values = drawn.map(standardised);
  const slopes = coefficients(
    values.map(({ scores }) => scores),
    cost.scores,
  );
  const rankSlopes = coefficients(
    drawn.map((column) => standardised(ranksOf(column)).scores),
    standardised(ranksOf(paid)).scores,
  );
  return inputs
    .map(({ path, assumed }, i): InputWeight => {
      const { scores } = values[i]!;
      const width = known.length === 0 ? 0 : quantile(scores, 0.9)! - quantile(scores, 0.1)!;
      return { path, assumed, share: rankSlopes[i]! ** 2, swing: slopes[i]! * cost.deviation * width };
    })
    .sort((a, b) => b.share - a.share);
}
