/**
 * Ranks from 1 for the lowest; equal values share the mean of their ranks.
 * @source spearman1904
 * @example
 * ranksOf([30, 10, 20]) // => [3, 1, 2]
 * ranksOf([5, 1, 5]) // => [2.5, 1, 2.5]
 */
export function ranksOf(values: readonly number[]): number[] {
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]! || a - b);
  const ranks = new Array<number>(values.length);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (to + 1 < order.length && values[order[to + 1]!] === values[order[from]!]) to++;
    for (let i = from; i <= to; i++) ranks[order[i]!] = (from + to) / 2 + 1;
    from = to + 1;
  }
  return ranks;
}
