/**
 * Length of a vector, without overflow on the way; for any number of entries.
 * @example
 * norm([3e200, 4e200]) // => 5e200
 */
export function norm(values: readonly number[]): number {
  let largest = 0;
  for (const value of values) largest = Math.max(largest, Math.abs(value));
  if (largest === 0 || !Number.isFinite(largest)) return largest;
  let sum = 0;
  for (const value of values) sum += (value / largest) ** 2;
  return largest * Math.sqrt(sum);
}
