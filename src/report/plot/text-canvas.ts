import type { Paint, Tone } from "../format/paint.js";

/** A sheet of single characters, row 0 on top, each set off in its own way. */
export interface TextCanvas {
  /** Sets a character; outside the sheet nothing happens. */
  readonly put: (column: number, row: number, sign: string, tone?: Tone) => void;
  /** Whether nothing has been set there. */
  readonly free: (column: number, row: number) => boolean;
  readonly lines: (paint: Paint) => string[];
}

/** An empty sheet. */
export function textCanvas(columns: number, rows: number): TextCanvas {
  const cells = Array.from({ length: rows }, () =>
    Array.from<{ sign: string; tone?: Tone } | undefined>({ length: columns }),
  );
  return {
    put: (column, row, sign, tone) => {
      if (row < 0 || row >= rows || column < 0 || column >= columns) return;
      cells[row]![column] = tone === undefined ? { sign } : { sign, tone };
    },
    free: (column, row) => cells[row]?.[column] === undefined,
    lines: (paint) =>
      cells.map((row) => {
        const last = row.findLastIndex((cell) => cell !== undefined);
        let line = "";
        let [tone, text]: [Tone | undefined, string] = [undefined, ""];
        const flush = (next: Tone | undefined): void => {
          line += tone === undefined ? text : paint(tone, text);
          [tone, text] = [next, ""];
        };
        for (const cell of row.slice(0, last + 1)) {
          if (cell?.tone !== tone) flush(cell?.tone);
          text += cell?.sign ?? " ";
        }
        flush(undefined);
        return line;
      }),
  };
}
