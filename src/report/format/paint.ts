/** A colour as `#rrggbb`. */
export type Hex = `#${string}`;

/** How a piece of text is set off on a terminal; a hex turns it into a block of that colour where that can be shown. */
export type Tone = "strong" | "quiet" | "bad" | "caution" | "good" | Hex;

/** Sets a text off, or leaves it as it is where colour is not wanted. What it returns is as wide as the text. */
export type Paint = (tone: Tone, text: string) => string;

const codes: Record<Exclude<Tone, Hex>, readonly [on: number, off: number]> = {
  strong: [1, 22],
  quiet: [2, 22],
  bad: [31, 39],
  caution: [33, 39],
  good: [32, 39],
};

const isHex = (tone: Tone): tone is Hex => tone.startsWith("#");

/** The tone that shows a text which is itself a colour, `#rrggbb`. */
export const swatchTone = (text: string): Hex | undefined =>
  /^#[0-9a-f]{6}$/i.test(text) ? (text as Hex) : undefined;

/** Text as it is. */
export const plain: Paint = (_tone, text) => text;

/** Text with terminal escapes; blocks of colour are left as text. */
export const coloured: Paint = (tone, text) => {
  if (text === "" || isHex(tone)) return text;
  const [on, off] = codes[tone];
  return `\u001b[${on}m${text}\u001b[${off}m`;
};

/** Text with terminal escapes for a terminal that can show every colour. */
export const trueColoured: Paint = (tone, text) => {
  if (text === "" || !isHex(tone)) return coloured(tone, text);
  const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(tone.slice(at, at + 2), 16));
  return `\u001b[48;2;${red};${green};${blue}m${" ".repeat(text.length)}\u001b[49m`;
};
