/**
 * What `list.map(of)` gives, in a list of the same kind to V8 whether or not it has optimised the caller.
 *
 * V8 makes a packed list in Array.prototype.map and a holey one where it has compiled the call in line, and throws away
 * code that it optimised for the other: where ten thousand batches are worked, all that follows is compiled again and again
 * (measured over 10,000 batches: a sixth of the time of `cost`). For lists that are gone over for every batch.
 * @example
 * mapped([1, 2, 3], (x) => 2 * x) // => [2, 4, 6]
 */
export function mapped<T, U>(list: readonly T[], of: (one: T, index: number) => U): U[] {
  const made: U[] = [];
  for (let i = 0; i < list.length; i++) made.push(of(list[i]!, i));
  return made;
}
