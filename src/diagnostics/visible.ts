/** What a terminal or a page acts on, or does not show: controls, line ends, direction marks, signs without width. */
const hidden = /(?![\ufe00-\ufe0f\u{e0100}-\u{e01ef}])[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\p{DI}]/gu;

const named: Readonly<Record<string, string>> = { "\t": "\\t", "\n": "\\n", "\r": "\\r" };

function escaped(sign: string): string {
  const code = sign.codePointAt(0)!.toString(16);
  return named[sign] ?? (code.length > 4 ? `\\u{${code}}` : `\\u${code.padStart(4, "0")}`);
}

/**
 * Text of the user's as people may see it: what would act on a terminal, hide or turn other text is shown as an escape.
 * @example
 * visible("a\u202eb\u001b[2J") // => "a\\u202eb\\u001b[2J"
 */
export const visible = (text: string): string => text.replace(hidden, escaped);
