import { findMinimum } from "../minimum.js";

/** Slopes of a curve by its constants at a place. */
export type Slopes = (x: number) => readonly number[];

/** How many evenly spaced places are tried before the best is refined. */
const probes = 60;

/** Determinant of a small symmetric matrix, by elimination. */
function determinant(matrix: readonly (readonly number[])[]): number {
  const work = matrix.map((row) => [...row]);
  let product = 1;
  for (let k = 0; k < work.length; k++) {
    const pivot = work[k]![k]!;
    if (pivot === 0) return 0;
    product *= pivot;
    for (let i = k + 1; i < work.length; i++) {
      const factor = work[i]![k]! / pivot;
      for (let j = k; j < work.length; j++) work[i]![j]! -= factor * work[k]![j]!;
    }
  }
  return product;
}

/**
 * Information that readings at some places hold on the constants of a curve: det(J'J), J their slopes. The volume of
 * the confidence region of the constants is proportional to its inverse root.
 * @source boxLucas1959
 * @example
 * information((x) => [1, x], [0, 2]) // => 4
 */
export function information(slopes: Slopes, places: readonly number[]): number {
  const rows = places.map(slopes);
  const count = rows[0]?.length ?? 0;
  return determinant(
    Array.from({ length: count }, (_, i) =>
      Array.from({ length: count }, (_, j) => rows.reduce((sum, row) => sum + row[i]! * row[j]!, 0)),
    ),
  );
}

/**
 * The place between two limits at which one more reading adds most to the information of those there are.
 *
 * From one reading of a first-order rise P (1 - exp(-k t)) at the longest time T the next is at
 * 1/k - T exp(-k T)/(1 - exp(-k T)).
 * @source boxLucas1959
 * @example
 * bestReading((x) => [1, x], [0], 0, 10) // => 10.0000
 */
export function bestReading(slopes: Slopes, known: readonly number[], low: number, high: number): number {
  const loss = (x: number): number => -information(slopes, [...known, x]);
  const step = (high - low) / probes;
  let best = low;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= probes; i++) {
    const value = loss(low + i * step);
    if (value < least) [best, least] = [low + i * step, value];
  }
  const refined = findMinimum(loss, {
    low: Math.max(low, best - step),
    high: Math.min(high, best + step),
    tolerance: 1e-9,
  });
  return refined.value < least ? refined.x : best;
}
