import { distance } from "fastest-levenshtein";

const letters = (word: string): string => [...word].sort().join("");

/** Edit distance in which two swapped letters count as one edit. */
const far = (a: string, b: string): number => {
  const edits = distance(a, b);
  return letters(a) === letters(b) ? edits / 2 : edits;
};

/** The known word closest to the written one, if close enough to be a slip of it. */
export function nearest(written: string, known: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const word of known) {
    const edits = far(written.toLowerCase(), word.toLowerCase());
    if (edits < least) [best, least] = [word, edits];
  }
  return best !== undefined && least <= Math.max(1, Math.floor(Math.max(written.length, best.length) * 0.34))
    ? best
    : undefined;
}

/** "a, b or c" */
export const listed = (words: readonly string[], link = "or"): string =>
  words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} ${link} ${words.at(-1)}`;
