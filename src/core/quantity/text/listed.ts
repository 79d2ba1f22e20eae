/** "a, b or c". */
export const listed = (words: readonly string[], link = "or"): string =>
  words.length < 2 ? words.join() : `${words.slice(0, -1).join(", ")} ${link} ${words.at(-1)}`;
