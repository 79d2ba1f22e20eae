/**
 * Puts every item of a list behind another list. `list.push(...more)` ends with an exception from some 120,000 items
 * on, as each becomes an argument of its own.
 */
export function append<T>(list: T[], more: Iterable<T>): void {
  for (const item of more) list.push(item);
}
