/**
 * A pure function that keeps its results under a key that stands for its arguments; the oldest results are
 * dropped where more than `most` are kept.
 * @example
 * remember((x, y) => [x + y], (x, y) => `${x} ${y}`, 8)(1, 2) // => [3]
 */
export function remember<Arguments extends readonly unknown[], Result>(
  compute: (...of: Arguments) => Result,
  keyOf: (...of: Arguments) => string,
  most: number,
): (...of: Arguments) => Result {
  const kept = new Map<string, { readonly result: Result }>();
  return (...of) => {
    const key = keyOf(...of);
    const known = kept.get(key);
    if (known) return known.result;
    const result = compute(...of);
    kept.set(key, { result });
    if (kept.size > most) kept.delete(kept.keys().next().value!);
    return result;
  };
}
