import { distance } from "fastest-levenshtein";

/** The known word closest to what was written, if close enough to be meant. */
export function nearest(written: string, known: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const word of known) {
    const far = distance(written.toLowerCase(), word.toLowerCase());
    if (far < least) [best, least] = [word, far];
  }
  return best !== undefined && least <= Math.max(1, Math.floor(Math.max(written.length, best.length) * 0.34))
    ? best
    : undefined;
}

/** "a, b or c" */
export const listed = (words: readonly string[], link = "or"): string =>
  words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} ${link} ${words.at(-1)}`;
