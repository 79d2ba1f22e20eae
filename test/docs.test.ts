import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { references } from "../src/core/references.js";

const root = new URL("../", import.meta.url).pathname;
const under = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(folder, name));
const sources = [...under("src/core"), ...under("src/log")];
const comments = (text: string): string[] => text.match(/\/\*\*[\s\S]*?\*\//g) ?? [];

/** `expression // => value` lines of the @example parts of a file. */
function examples(file: string): { expression: string; expected: string }[] {
  return comments(readFileSync(join(root, file), "utf8")).flatMap((comment) =>
    comment
      .split("@example")
      .slice(1)
      .flatMap((part) => part.split("\n"))
      .map((line) => /^\s*\*?\s*(.+?)\s*\/\/ => (.+?)\s*(\*\/)?$/.exec(line))
      .filter((match) => match !== null)
      .map((match) => ({ expression: match[1]!, expected: match[2]! })),
  );
}

/** Equal, where a number need only agree to the digits that are printed. */
function agrees(actual: unknown, expected: unknown, printed: string): void {
  if (typeof expected === "number") {
    const digits = /\.(\d+)/.exec(printed)?.[1]?.length ?? 0;
    const scale = Number(`1e${/e([+-]?\d+)/.exec(printed)?.[1] ?? 0}`);
    expect(Math.abs((actual as number) - expected)).toBeLessThanOrEqual(
      0.5 * 10 ** -digits * scale * (1 + 1e-9),
    );
  } else expect(actual).toEqual(expected);
}

for (const file of sources) {
  const found = examples(file);
  if (found.length === 0) continue;
  test(`the examples in ${file} give what they print`, async () => {
    const exported = (await import(join(root, file))) as Record<string, unknown>;
    for (const { expression, expected } of found) {
      const evaluate = (code: string): unknown =>
        new Function(...Object.keys(exported), `return (${code});`)(...Object.values(exported));
      agrees(evaluate(expression), evaluate(expected), expected);
    }
  });
}

test("every source named in a doc comment or beside an outside check is in the bibliography, and every entry is used", () => {
  const used = new Set<string>();
  for (const file of [...sources, ...under("test/reference")]) {
    const text = readFileSync(join(root, file), "utf8");
    for (const match of text.matchAll(/(?:@source|\bsource:) ([a-z][A-Za-z0-9]*)/g)) used.add(match[1]!);
  }
  expect([...used].sort()).toEqual(Object.keys(references).sort());
});
