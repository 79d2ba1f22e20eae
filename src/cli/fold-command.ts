/**
 * A command line indented by two, parted before options with a backslash where it is wider than the columns; a
 * shell reads the parts as one line.
 */
export function foldCommand(line: string, columns: number): string {
  const pieces = line.replace(/ \\\n\s*/g, " ").split(/ (?=--|<|>)/);
  const lines: string[] = [];
  for (const [i, piece] of pieces.entries()) {
    const backslash = i < pieces.length - 1 ? 2 : 0;
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + piece.length + backslash <= columns)
      lines.push(`${lines.pop()} ${piece}`);
    else lines.push(last === undefined ? `  ${piece}` : `      ${piece}`);
  }
  return lines.join(" \\\n");
}
