import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { linesOf } from "../../../src/batch-file/source/lines.js";
import { wrongIndent } from "../../../src/batch-file/yaml/yaml-indent.js";
import { readYaml } from "../../../src/batch-file/yaml/yaml-read.js";

const root = new URL("../../../", import.meta.url).pathname;
const filesIn = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".yaml"))
    .map((name) => join(root, folder, name));
const good = [...filesIn("fixtures/good"), ...filesIn("examples")];
const read = async (text: string) => (await readYaml(text, linesOf("batch.yaml", text))).diagnostics;

test("wrongIndent finds nothing in files that are well formed", () => {
  expect(good.length).toBeGreaterThan(10);
  for (const file of good) {
    const text = readFileSync(file, "utf8");
    expect([file, wrongIndent(text, linesOf(file, text))?.diagnostic]).toEqual([file, undefined]);
  }
});

test("wrongIndent passes over everything that YAML lets begin where it likes", () => {
  const text = [
    "a: &one",
    "  b: !!map",
    "      c: 1",
    "  note: text that goes on",
    "      in the next line",
    "  long: |",
    "      any:",
    "    - indentation",
    "  d: { e: [1,",
    "2], f: 'it''s { open",
    " here' } # a comment: with a colon",
    "# another",
    "list:",
    "- 1",
    "-   x: 1",
    "    y: 2",
    "- - 2",
    "  - 3",
    "-",
    "      z: 4",
    '"quoted : key": 5',
    "time: 12:30",
  ].join("\r\n");
  expect(wrongIndent(text, linesOf("", text))).toBeUndefined();
});

const sample = `batch: kites
currency: EUR # the only one
rates:
  electricity: 0.31 /kWh
  water: 4.20 /m3

tanks:
  # the small one
  bench:
    volume: 6 L
    heater: 400 W
  trough: { volume: 12 L, heater: 800 W }
dyes:
  lagoon:
    dilution: 1:9
    swatches:
    - time: 15 s
      lab: [82, 10, 5]
    - time: 60 s
      lab: [70, 30, 12]
orders:
  - part: hook
    shade: pale
  - part: tray
    shade: pale
`.split("\n");
const blank = /^\s*(?:#.*)?$/;

test("one line that is indented wrongly is one error that says so and names the line", async () => {
  let refused = 0;
  for (const [i, line] of sample.entries()) {
    if (blank.test(line)) continue;
    const indent = line.length - line.trimStart().length;
    for (const columns of [0, indent - 1, indent + 1, indent + 2, indent + 5]) {
      if (columns < 0 || columns === indent) continue;
      const text = sample.with(i, " ".repeat(columns) + line.trimStart()).join("\n");
      const diagnostics = await read(text);
      if (diagnostics === undefined) continue;
      refused++;
      expect([line, diagnostics]).toMatchObject([line, [{ code: "yaml" }]]);
      const { message, help, spans } = diagnostics[0]!;
      expect(message).toContain("indented by");
      expect(spans[0]!.line).toBeGreaterThan(i);
      if (Math.abs(columns - indent) === 1)
        expect(`line ${spans[0]!.line}: ${message}; ${help}`).toMatch(new RegExp(`\\bline ${i + 1}\\b`));
    }
  }
  expect(refused).toBeGreaterThan(50);
});

test("a tab in the indentation is one error", async () => {
  for (const [i, line] of sample.entries()) {
    if (blank.test(line) || !line.startsWith(" ")) continue;
    for (const blanks of ["\t", " \t", "\t "]) {
      const diagnostics = await read(sample.with(i, blanks + line.trimStart()).join("\n"));
      if (diagnostics === undefined) continue;
      expect(diagnostics).toMatchObject([
        { message: "the line is indented with a tab", spans: [{ line: i + 1 }] },
      ]);
    }
  }
});

test("other errors of the parser stay where no line is indented wrongly, and before the first that is", async () => {
  expect(await read('a: "x\\q"\nb: 1\n')).toMatchObject([{ message: expect.stringContaining("backslash") }]);
  expect(await read('a: "x\\q"\nb: 1\n c: 2\n')).toMatchObject([
    { message: expect.stringContaining("backslash") },
    { message: expect.stringContaining("indented by 1 space") },
  ]);
  expect((await read("a: { b: 1\nc: 2\n  d: 3\n"))?.slice(0, 1)).toMatchObject([
    { message: expect.stringContaining("brace") },
  ]);
});

test("wrongIndent reads any text in one go", () => {
  fc.assert(
    fc.property(fc.stringMatching(/^(?:[-:#"'{}[\]|>&!,ab \t]|\n){0,200}$/), (text) => {
      wrongIndent(text, linesOf("", text));
    }),
    { numRuns: 500 },
  );
  for (const piece of ["a", " ", "- ", ": ", "{", '"', "&a", "a: ", "'"]) {
    const text = piece.repeat(100_000);
    const start = performance.now();
    wrongIndent(text, linesOf("", text));
    expect(performance.now() - start).toBeLessThan(5000);
  }
}, 120_000);
