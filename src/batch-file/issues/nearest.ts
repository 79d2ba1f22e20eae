import damerauLevenshtein from "damerau-levenshtein";

/** Letters of the longest words that are compared; nobody mistypes a longer one, and the time grows with its square. */
const longest = 100;

/** Most letters that may be missing, added, changed or swapped with their neighbour: a third of the word, at least one. */
const mostEdits = (letters: number): number => Math.max(1, Math.floor(letters / 3));

/** The known word closest to the written one, if close enough to be a slip of it. */
export function nearest(written: string, known: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const word of known) {
    const letters = Math.max(written.length, word.length);
    const most = mostEdits(letters);
    if (letters > longest || Math.abs(written.length - word.length) > most) continue;
    const { steps } = damerauLevenshtein(written.toLowerCase(), word.toLowerCase());
    if (steps <= most && steps < least) [best, least] = [word, steps];
  }
  return best;
}
