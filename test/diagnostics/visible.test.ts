import fc from "fast-check";
import { expect, test } from "vitest";
import { renderDiagnostic } from "../../src/diagnostics/render-text.js";
import { visible } from "../../src/diagnostics/visible.js";

test("visible shows controls, line ends, direction marks and signs without width as escapes", () => {
  expect(visible("a\u001b[2Jb\tc\r\nd\u202ee\u0085f\u200bg\u{e0041}h\ud800")).toBe(
    "a\\u001b[2Jb\\tc\\r\\nd\\u202ee\\u0085f\\u200bg\\u{e0041}h\\ud800",
  );
});

test("visible leaves letters, accents, emoji and spaces of every width as they are", () => {
  for (const text of ["größe ветка 漢字 e\u0301", "❤\ufe0f 👍", "6\u00a0L", "a\u2009b", ""])
    expect(visible(text)).toBe(text);
});

test("visible leaves no sign of the kinds that it shows, whatever the text", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 50 }), (text) => {
      expect(visible(text)).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
    }),
    { numRuns: 1000 },
  );
});

test("the marks are under the fault, after and in characters that are shown as escapes", () => {
  const mark = (text: string, column: number, length: number) =>
    renderDiagnostic({
      code: "x",
      severity: "error",
      message: "m",
      spans: [{ file: "f", line: 1, column, length, text }],
    })
      .split("\n")
      .slice(2);
  expect(mark("a\u202eb: 6L", 5, 2)).toEqual(["   1 | a\\u202eb: 6L", "     |          ^^"]);
  expect(mark("\ta: \u001b6", 5, 2)).toEqual(["   1 |  a: \\u001b6", "     |     ^^^^^^^"]);
});
