import fc from "fast-check";
import stringWidth from "fast-string-width";
import { expect, test } from "vitest";
import { parse } from "yaml";
import type { BatchRead } from "../../src/batch-file/batch-read.js";
import { readBatch } from "../../src/batch-file/read-batch.js";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { renderText } from "../../src/diagnostics/render-text.js";
import { readFile } from "./read.js";

const whole = ["everything.yaml", "everything-workshop.yaml", "everything-dyes.yaml"]
  .map((name) => readFile(`fixtures/good/${name}`))
  .join("\n")
  .replace(/^include:.*$/m, "");

const noFile = (name: string): string => {
  throw Object.assign(new Error(name), { code: "ENOENT" });
};

/** What must hold whatever was read: a batch or an error, and places that exist in the text. */
function holds(read: BatchRead, text: string): void {
  const errors = read.diagnostics.filter((d: Diagnostic) => d.severity === "error");
  expect(read.batch === undefined).toBe(errors.length > 0);
  const lines = text.replace(/^\uFEFF/, "").split("\n");
  for (const diagnostic of read.diagnostics) {
    expect(diagnostic.help).toBeTruthy();
    for (const span of diagnostic.spans) {
      if (span.file === "--set") continue;
      expect(span.text).toBe(lines[span.line - 1]!.replace(/\r$/, ""));
      expect(span.column).toBeGreaterThanOrEqual(1);
      expect(span.column).toBeLessThanOrEqual(span.text.length + 1);
      expect(span.length).toBeGreaterThanOrEqual(1);
    }
  }
  for (const line of renderText(read.diagnostics, { columns: 80 }).split("\n"))
    expect(stringWidth(line)).toBeLessThanOrEqual(80);
}

const odd = fc.constantFrom(
  "",
  " ",
  ":",
  "- ",
  "{",
  "}",
  "[",
  "]",
  ",",
  "#",
  "&a ",
  "*a",
  "!",
  "|",
  ">",
  "'",
  '"',
  "%",
  "@",
  "\t",
  "\n",
  "\r\n",
  "~",
  "null",
  "true",
  ".nan",
  ".inf",
  "1e999",
  "0x10",
  "-1",
  "6",
  "6 L",
  "6 kg",
  "80 °C",
  "1:9",
  "± 3",
  "<<",
  "__proto__",
  "constructor",
  "\u0000",
  "\ufeff",
  "\u2028",
  "𝕏",
  "---\n",
  "...\n",
  "? ",
  "NaN",
);

test("a batch file with characters put in, taken out or exchanged anywhere is read or refused, never thrown at", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(fc.nat(whole.length), fc.nat(12), odd), { minLength: 1, maxLength: 4 }),
      async (edits) => {
        let text = whole;
        for (const [at, gone, put] of edits) text = text.slice(0, at) + put + text.slice(at + gone);
        holds(await readBatch({ name: "batch.yaml", text, readFile: noFile }), text);
      },
    ),
    { numRuns: 60 },
  );
});

type Data = { [key: string]: unknown } | unknown[];
const places = (data: unknown): (readonly [Data, string])[] =>
  typeof data !== "object" || data === null
    ? []
    : Object.entries(data).flatMap(([key, value]) => [[data as Data, key] as const, ...places(value)]);

test("a batch with any value in the place of another is read or refused, never thrown at, from JSON", async () => {
  const value = fc.oneof(
    odd,
    fc.double(),
    fc.boolean(),
    fc.constant(null),
    fc.string(),
    fc.jsonValue({ maxDepth: 2 }),
    fc.constantFrom(
      "coral",
      "lagoon",
      "fresh",
      "log",
      [],
      {},
      [[]],
      [{}],
      { value: 3 },
      "none",
      "30 s",
      "46 /kg",
    ),
  );
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(fc.nat(), value, fc.boolean()), { minLength: 1, maxLength: 5 }),
      fc.constantFrom([], ["handling.load=3"], ["tanks.bench=*"], ["orders.0={}"]),
      async (changes, overrides) => {
        const data = parse(whole) as Data;
        for (const [pick, put, gone] of changes) {
          const all = places(data);
          const [holder, key] = all[pick % all.length]!;
          if (gone && !Array.isArray(holder)) delete holder[key];
          else (holder as { [key: string]: unknown })[key] = put;
        }
        const text = JSON.stringify(data, null, 1);
        holds(await readBatch({ name: "batch.json", text, readFile: noFile, overrides }), text);
      },
    ),
    { numRuns: 100 },
  );
});

test("any text at all is read or refused", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.oneof(
        fc.string(),
        fc.string({ unit: "binary" }),
        fc.array(odd).map((a) => a.join("")),
      ),
      async (text) => {
        holds(await readBatch({ name: "batch.yaml", text, readFile: noFile }), text);
      },
    ),
    { numRuns: 200 },
  );
});
