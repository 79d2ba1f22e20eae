import type { KeyRow } from "../../batch-file/json-schema/key-table.js";

/** Steps of a path that mean any name, that of a mix, and any item of a list. */
const anyStep = new Set(["NAME", "MIX", "ITEM"]);

/** Whether a path as a user has it, "tanks.six", leads to a key or to one above it. */
function leadsTo(path: string, row: KeyRow): boolean {
  const steps = row.path.split(".");
  return path.split(".").every((step, i) => steps[i] === step || anyStep.has(steps[i] ?? ""));
}

/** The keys that a word names or a path leads to; where there are none, those whose meaning has the word. */
export function findKeys(rows: readonly KeyRow[], word: string): readonly KeyRow[] {
  const has = (text: string): boolean => text.toLowerCase().includes(word.toLowerCase());
  const named = rows.filter((row) => has(row.path) || (word.includes(".") && leadsTo(word, row)));
  return named.length > 0 ? named : rows.filter(({ meaning }) => has(meaning));
}

/** Every key by its own name, once. */
export const keyNames = (rows: readonly KeyRow[]): readonly string[] => [
  ...new Set(rows.flatMap(({ path }) => path.split(".").filter((step) => !anyStep.has(step)))),
];
