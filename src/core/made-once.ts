/**
 * The value of a key in a map, made where the map does not have it; the oldest goes where there are more than `most`.
 * @example
 * madeOnce(new Map([["six", 6]]), "six", 8, () => 7) // => 6
 */
export function madeOnce<Key, Value>(map: Map<Key, Value>, key: Key, most: number, make: () => Value): Value {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made = make();
  map.set(key, made);
  if (map.size > most) map.delete(map.keys().next().value!);
  return made;
}
