/** Place of a cell in its line, without blanks around it; from 0. */
export interface CellPlace {
  readonly start: number;
  readonly length: number;
}

/** Places of the cells of one line of CSV; quotes belong to their cell. A cell that goes on in the next line ends here. */
export function cellsOfLine(line: string, delimiter: string): CellPlace[] {
  const places: CellPlace[] = [];
  let start = 0;
  let quoted = false;
  for (let at = 0; at <= line.length; at += 1) {
    if (line[at] === '"') quoted = !quoted;
    if (at < line.length && (quoted || line[at] !== delimiter)) continue;
    const cell = line.slice(start, at);
    const text = cell.trim();
    places.push({ start: start + cell.length - cell.trimStart().length, length: text.length });
    start = at + 1;
  }
  return places;
}
