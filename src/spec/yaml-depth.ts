import type { CST } from "yaml";

/** Deepest nesting that is read; a batch file needs 5. */
export const deepest = 64;

/** Where a token tree first passes the deepest nesting that is read; undefined if it does not. Uses no recursion. */
export function tooDeepAt(tokens: readonly CST.Token[]): number | undefined {
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
