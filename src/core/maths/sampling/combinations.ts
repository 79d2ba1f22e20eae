/**
 * One of each list, in every combination, the last list varying first.
 * @example
 * [...combinations([["a", "b"], ["c", "d"]])] // => [["a", "c"], ["a", "d"], ["b", "c"], ["b", "d"]]
 */
export function* combinations<T>(lists: readonly (readonly T[])[]): Generator<readonly T[]> {
  const count = lists.reduce((product, list) => product * list.length, 1);
  for (let i = 0; i < count; i++) {
    let rest = i;
    const chosen: T[] = [];
    for (const list of lists.toReversed()) {
      chosen.unshift(list[rest % list.length]!);
      rest = Math.floor(rest / list.length);
    }
    yield chosen;
  }
}
