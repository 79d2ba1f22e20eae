interface Row {
  readonly part: string;
  readonly shade: string;
  readonly base: string | null;
}

/** Whether the base is needed to tell rows apart: a part in one shade is there on several bases. */
export function basesShown(rows: readonly Row[]): boolean {
  const bases = new Map<string, string | null>();
  for (const { part, shade, base } of rows) {
    const key = JSON.stringify([part, shade]);
    if (bases.has(key) && bases.get(key) !== base) return true;
    bases.set(key, base);
  }
  return false;
}
