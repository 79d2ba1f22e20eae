import { type CST, Lexer, Parser } from "yaml";
import { append } from "../../core/append.js";
import { deepest } from "./yaml-tree.js";

/** Where a token tree first exceeds the deepest nesting allowed; undefined if it does not. Uses no recursion. */
function tooDeepAt(tokens: readonly CST.Token[]): number | undefined {
  const open: { token: CST.Token; depth: number }[] = tokens.map((token) => ({ token, depth: 0 }));
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { token, depth } = next;
    if (token.type === "document") {
      if (token.value !== undefined) open.push({ token: token.value, depth });
    } else if ("items" in token) {
      if (depth >= deepest) return token.offset;
      for (const item of token.items) {
        if (item.key !== undefined && item.key !== null) open.push({ token: item.key, depth: depth + 1 });
        if (item.value !== undefined) open.push({ token: item.value, depth: depth + 1 });
      }
    }
  }
  return undefined;
}

/**
 * Tokens of a text, or the place where it nests too deep. Parsing stops there, since its time grows
 * with the square of the depth (100 000 brackets took 5 s) and what comes after it aborts the process.
 */
export function tokensOf(text: string): { tokens: readonly CST.Token[]; tooDeep?: number } {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  let deep = false;
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    // The open tokens are nested in each other, so the nesting is at least as deep as the stack.
    if (parser.stack.length > deepest) deep = true;
    // A few more than allowed, as tooDeepAt finds the exact place.
    if (parser.stack.length > deepest + 8) return { tokens: [], tooDeep: parser.offset };
  }
  append(tokens, parser.end());
  const tooDeep = deep ? tooDeepAt(tokens) : undefined;
  return tooDeep === undefined ? { tokens } : { tokens, tooDeep };
}
