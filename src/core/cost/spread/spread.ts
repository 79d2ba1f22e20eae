import { quantile } from "d3-array";
import { largest } from "../../maths/extent.js";
import { latinHypercube } from "../../maths/sampling/latin-hypercube.js";
import { type InputWeight, inputWeights } from "./input-weights.js";
import { quantileOf, type UncertainInput } from "./uncertain-input.js";
import { usualDraws } from "./usual-draws.js";

/** What a tenth, half and nine tenths of the draws lie below. */
export interface Percentiles {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** What one draw gives: the cost that inputs are ranked by, and lists of figures under their names. */
export interface Evaluated<Name extends string> {
  readonly cost: number | null;
  readonly outputs: Readonly<Record<Name, readonly (number | null)[]>>;
}

export interface Spread<Name extends string> {
  readonly draws: number;
  readonly seed: number;
  /** Draws in which the batch could not be worked: left out of everything below. */
  readonly failed: number;
  readonly cost: Percentiles | null;
  readonly outputs: Readonly<Record<Name, readonly (Percentiles | null)[]>>;
  /** Inputs by how much they move the cost, the strongest first. */
  readonly ranking: readonly InputWeight[];
}

/**
 * P10, P50 and P90 of what is known, on a straight line between neighbours.
 * @source hyndmanFan1996 definition 7
 * @example
 * percentilesOf([40, null, 10, 30, 20, 50]) // => { p10: 14, p50: 30, p90: 46 }
 * percentilesOf([null]) // => null
 */
export function percentilesOf(values: readonly (number | null)[]): Percentiles | null {
  const [p10, p50, p90] = [0.1, 0.5, 0.9].map((p) => quantile(values, p));
  return p10 === undefined || p50 === undefined || p90 === undefined ? null : { p10, p50, p90 };
}

/**
 * Works a batch again and again with its uncertain inputs drawn anew, a Latin hypercube of their distributions, and
 * says how the results spread: normal ones cut where values cannot lie, log-normal ones of what is known to a factor.
 * `evaluate` takes one value an input, in their order, and gives nothing where the batch cannot be worked so. The same
 * seed gives the same result.
 * @source mckay1979 section 2
 */
export function spread<Name extends string>(
  inputs: readonly UncertainInput[],
  evaluate: (values: readonly number[]) => Evaluated<Name> | undefined,
  {
    draws = usualDraws.draws,
    seed = usualDraws.seed,
  }: { readonly draws?: number; readonly seed?: number } = {},
): Spread<Name> {
  const columns = latinHypercube(draws, inputs.length, seed).map((column, i) =>
    column.map((u) => quantileOf(inputs[i]!, u)),
  );
  const kept: number[] = [];
  const found: Evaluated<Name>[] = [];
  for (let draw = 0; draw < draws; draw++) {
    const result = evaluate(columns.map((column) => column[draw]!));
    if (result === undefined) continue;
    kept.push(draw);
    found.push(result);
  }
  const costs = found.map(({ cost }) => cost);
  const names = Object.keys(found[0]?.outputs ?? {}) as Name[];
  const outputs = names.map((name) => {
    const length = largest(found.map((result) => result.outputs[name].length));
    const at = (i: number): (number | null)[] => found.map((result) => result.outputs[name][i] ?? null);
    return [name, Array.from({ length }, (_, i) => percentilesOf(at(i)))] as const;
  });
  return {
    draws,
    seed,
    failed: draws - found.length,
    cost: percentilesOf(costs),
    outputs: Object.fromEntries(outputs) as unknown as Spread<Name>["outputs"],
    ranking: inputWeights(
      inputs,
      columns.map((column) => kept.map((draw) => column[draw]!)),
      costs,
    ),
  };
}
