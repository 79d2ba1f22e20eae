/**
 * A count with its noun.
 * @example
 * counted(1, "file") // => "1 file"
 * counted(2, "batch", "batches") // => "2 batches"
 */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
