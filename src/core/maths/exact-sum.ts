/**
 * The sum of numbers, correctly rounded and so the same in every order.
 *
 * Partial sums that do not overlap carry what each addition would lose. A sum that overflows on the way, or
 * that holds an infinity or NaN, is that of plain addition.
 * @source shewchuk1997 section 2
 * @example
 * exactSum([0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1]) // => 1
 * exactSum([1e100, 1, -1e100]) // => 1
 */
export function exactSum(values: Iterable<number>): number {
  const partials: number[] = [];
  let plain = 0;
  let count = 0;
  for (const value of values) {
    plain += value;
    count = add(partials, count, value);
  }
  return total(partials, count, plain);
}

/**
 * The `exactSum` of something of each of a list.
 * @example
 * exactSumOf([{ parts: 2 }, { parts: 3 }], ({ parts }) => parts) // => 5
 */
export function exactSumOf<T>(list: readonly T[], of: (one: T) => number): number {
  const partials: number[] = [];
  let plain = 0;
  let count = 0;
  for (const one of list) {
    const value = of(one);
    plain += value;
    count = add(partials, count, value);
  }
  return total(partials, count, plain);
}

/** Adds a number to so many partial sums that do not overlap, from small to large; how many they are then. */
function add(partials: number[], count: number, value: number): number {
  let x = value;
  let kept = 0;
  for (let i = 0; i < count; i++) {
    const partial = partials[i]!;
    const swap = Math.abs(x) < Math.abs(partial);
    const large = swap ? partial : x;
    const small = swap ? x : partial;
    const high = large + small;
    const low = small - (high - large);
    if (low !== 0) partials[kept++] = low;
    x = high;
  }
  partials[kept++] = x;
  return kept;
}

function total(partials: number[], count: number, plain: number): number {
  partials.length = count;
  return partials.every(Number.isFinite) ? roundedTotal(partials) : plain;
}

/** Partials from small to large into one number; a tie looks at the next partial for its direction. */
function roundedTotal(partials: readonly number[]): number {
  let index = partials.length - 1;
  let total = partials[index] ?? 0;
  let rest = 0;
  while (index > 0 && rest === 0) {
    index -= 1;
    const before = total;
    total = before + partials[index]!;
    rest = partials[index]! - (total - before);
  }
  if (index > 0 && Math.sign(rest) === Math.sign(partials[index - 1]!)) {
    const doubled = rest * 2;
    const moved = total + doubled;
    if (doubled === moved - total) return moved;
  }
  return total;
}
