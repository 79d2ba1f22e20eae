import type { CST } from "yaml";

/** A bracket, brace or quote that is opened and never closed. */
export interface Opening {
  readonly offset: number;
  readonly sign: string;
}

const closes: { readonly [open: string]: string } = { "{": "flow-map-end", "[": "flow-seq-end" };

/** All unclosed brackets, braces and quotes of a token tree, innermost last. Uses no recursion; the depth must be checked before. */
export function openings(tokens: readonly CST.Token[]): Opening[] {
  const found: Opening[] = [];
  const todo: CST.Token[] = [...tokens];
  for (let token = todo.pop(); token !== undefined; token = todo.pop()) {
    if (token.type === "document") {
      if (token.value !== undefined) todo.push(token.value);
    } else if (token.type === "single-quoted-scalar" || token.type === "double-quoted-scalar") {
      const quote = token.source[0]!;
      if (token.source.length < 2 || !token.source.endsWith(quote))
        found.push({ offset: token.offset, sign: quote });
    } else if ("items" in token) {
      if (token.type === "flow-collection") {
        const sign = token.start.source;
        if (!token.end.some((end) => end.type === closes[sign]))
          found.push({ offset: token.start.offset, sign });
      }
      for (const { key, value } of token.items) {
        if (key) todo.push(key);
        if (value) todo.push(value);
      }
    }
  }
  return found.sort((a, b) => a.offset - b.offset);
}
