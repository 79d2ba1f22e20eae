/**
 * Source of a regular expression for a word in capitals, small letters or both.
 * @example new RegExp(`^${anyCase("led-b3")}$`).test("LED-b3") // => true
 */
export const anyCase = (word: string): string =>
  word.replace(/[a-z]/gi, (letter) => `[${letter.toLowerCase()}${letter.toUpperCase()}]`);
