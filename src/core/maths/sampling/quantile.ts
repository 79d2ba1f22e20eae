/**
 * The value that a share p of a sorted sample lies below, between neighbours on a straight line.
 *
 * The lowest value is at p = 0, the highest at p = 1. 0 <= p <= 1; NaN for an empty sample.
 * @source hyndmanFan1996 definition 7
 * @example
 * quantileOf([1, 2, 3, 4], 0.5) // => 2.5
 * quantileOf([10, 20, 30], 0.25) // => 15
 */
export function quantileOf(sorted: ArrayLike<number>, p: number): number {
  const at = p * (sorted.length - 1);
  const below = Math.floor(at);
  const low = sorted[below] ?? Number.NaN;
  return low + (at - below) * ((sorted[below + 1] ?? low) - low);
}
