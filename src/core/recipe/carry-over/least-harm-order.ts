/** Most colours whose best order is found. */
export const mostOrdered = 12;

/**
 * The order with the least sum of harms from each one to the next; up to 12 of them, of equal orders the first by place.
 *
 * harms[i][j]: what i does to j when j comes right after it. Exact: the best order of each subset by the last one in it.
 * @source heldKarp1962
 * @example
 * leastHarmOrder([[0, 1, 9], [5, 0, 1], [9, 9, 0]]) // => [0, 1, 2]
 * leastHarmOrder([[0, 9], [1, 0]]) // => [1, 0]
 */
export function leastHarmOrder(harms: readonly (readonly number[])[]): readonly number[] {
  const n = harms.length;
  if (n > mostOrdered)
    throw new Error(`an order of ${n} colours was asked for, at most ${mostOrdered} can be`);
  const best: { readonly sum: number; readonly order: readonly number[] }[][] = Array.from(
    { length: 1 << n },
    () => [],
  );
  for (let i = 0; i < n; i++) best[1 << i]![i] = { sum: 0, order: [i] };
  for (let set = 1; set < 1 << n; set++)
    for (let last = 0; last < n; last++) {
      const at = best[set]![last];
      if (at === undefined) continue;
      for (let next = 0; next < n; next++) {
        if (set & (1 << next)) continue;
        const sum = at.sum + harms[last]![next]!;
        const known = best[set | (1 << next)]![next];
        if (known === undefined || sum < known.sum)
          best[set | (1 << next)]![next] = { sum, order: [...at.order, next] };
      }
    }
  const whole = best.at(-1)!.filter((one) => one !== undefined);
  return whole.sort((one, other) => one.sum - other.sum)[0]?.order ?? [];
}
