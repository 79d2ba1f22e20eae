/** How a piece of text is set off on a terminal. */
export type Tone = "strong" | "quiet" | "bad" | "caution" | "good";

/** Sets a text off, or leaves it as it is where colour is not wanted. */
export type Paint = (tone: Tone, text: string) => string;

const codes: Record<Tone, readonly [on: number, off: number]> = {
  strong: [1, 22],
  quiet: [2, 22],
  bad: [31, 39],
  caution: [33, 39],
  good: [32, 39],
};

/** Text as it is. */
export const plain: Paint = (_tone, text) => text;

/** Text with terminal escapes. */
export const coloured: Paint = (tone, text) => {
  const [on, off] = codes[tone];
  return text === "" ? "" : `\u001b[${on}m${text}\u001b[${off}m`;
};
