/**
 * The middle one of some values, or the mean of the two in the middle; undefined of none.
 * @example median([5, 1, 2]) // => 2
 * @example median([5, 1, 2, 4]) // => 3
 */
export function median(values: readonly number[]): number | undefined {
  const sorted = values.toSorted((one, other) => one - other);
  const half = sorted.length / 2;
  return half === 0 ? undefined : (sorted[Math.ceil(half) - 1]! + sorted[Math.floor(half)]!) / 2;
}
