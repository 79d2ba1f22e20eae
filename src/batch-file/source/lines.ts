import type { Span } from "../../diagnostics/diagnostic.js";

/** Turns places in a text (counted in UTF-16 units) into lines and columns. */
export interface Lines {
  /** The first line of the part from `start` to `end`. */
  span(start: number, end: number): Span;
}

/** Finds lines in a text; builds the table of lines on first use. */
export function linesOf(file: string, text: string): Lines {
  let starts: number[] | undefined;
  const table = (): number[] => {
    const found = [0];
    for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) found.push(at + 1);
    return found;
  };
  return {
    span(start, end) {
      starts ??= table();
      let low = 0;
      let high = starts.length - 1;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if (starts[middle]! <= start) low = middle;
        else high = middle - 1;
      }
      const from = starts[low]!;
      const line = text.slice(from, starts[low + 1] ?? text.length).replace(/\r?\n?$/, "");
      const column = Math.min(start - from, line.length) + 1;
      const length = Math.max(1, Math.min(end - start, line.length - column + 1));
      return { file, line: low + 1, column, length, text: line };
    },
  };
}
