/** How wide one column of a text table may be. */
export interface Need {
  /** Without breaking a word, or a number. */
  readonly least: number;
  /** On one line. */
  readonly most: number;
}

/**
 * Widths of columns that together take at most `room`: all on one line if they fit, else the narrowest are
 * served first and the widest give way. Undefined where even the least does not fit.
 */
export function share(needs: readonly Need[], room: number): number[] | undefined {
  const widths = needs.map(({ least, most }) => Math.min(least, most));
  let spare = room - widths.reduce((sum, width) => sum + width, 0);
  if (spare < 0) return undefined;
  while (spare > 0) {
    let narrowest = -1;
    needs.forEach(({ most }, i) => {
      if (widths[i]! < most && (narrowest < 0 || widths[i]! < widths[narrowest]!)) narrowest = i;
    });
    if (narrowest < 0) return widths;
    widths[narrowest]! += 1;
    spare -= 1;
  }
  return widths;
}
