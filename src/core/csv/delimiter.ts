const candidates = [",", ";", "\t"] as const;
export type Delimiter = (typeof candidates)[number];

/** The first line of a text that holds anything. */
export const headerLine = (text: string): string => /[^\r\n]*[^\s\ufeff][^\r\n]*/.exec(text)?.[0] ?? "";

/**
 * What separates the columns of a file, by its header row: the sign that it has most often outside quotes; a comma
 * where it has none.
 * @example delimiterOf('name;"a,b,c"') // => ";"
 */
export function delimiterOf(header: string): Delimiter {
  const bare = header.replace(/"(?:[^"]|"")*"/g, "");
  const count = (sign: string): number => bare.split(sign).length - 1;
  return candidates.reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}
