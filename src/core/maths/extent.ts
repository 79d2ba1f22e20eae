/**
 * The least of any number of values, and of `most`. `Math.min(...values)` ends with an exception from some 120,000
 * values on, as each becomes an argument of its own.
 * @example
 * smallest([3, 1, 2]) // => 1
 * smallest([], 5) // => 5
 */
export function smallest(values: Iterable<number>, most = Number.POSITIVE_INFINITY): number {
  let least = most;
  for (const value of values) least = Math.min(least, value);
  return least;
}

/**
 * The largest of any number of values, and of `least`.
 * @example
 * largest([3, 1, 2]) // => 3
 * largest([], 0) // => 0
 */
export function largest(values: Iterable<number>, least = Number.NEGATIVE_INFINITY): number {
  let most = least;
  for (const value of values) most = Math.max(most, value);
  return most;
}
