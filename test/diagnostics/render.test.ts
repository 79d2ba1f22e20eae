import { expect, test } from "vitest";
import type { Diagnostic, Span } from "../../src/diagnostics/diagnostic.js";
import { renderJson } from "../../src/diagnostics/render-json.js";
import { renderPlain } from "../../src/diagnostics/render-plain.js";
import { renderDiagnostic, renderText } from "../../src/diagnostics/render-text.js";

const span: Span = { file: "kites.yaml", line: 12, column: 13, length: 1, text: "    volume: 6" };
const missing: Diagnostic = {
  code: "unit-missing",
  severity: "error",
  message: "a volume needs a unit",
  help: "write 6 L or 6000 mL",
  spans: [span],
};
const twice: Diagnostic = {
  code: "defined-twice",
  severity: "warning",
  message: "tanks.bench is defined in two files",
  spans: [
    { file: "a.yaml", line: 3, column: 3, length: 5, text: "  bench:" },
    { file: "b.yaml", line: 7, column: 3, length: 5, text: "  bench:", label: "first defined here" },
  ],
};

test("renderText shows place, line, mark and help, and counts at the end", () => {
  expect(renderText([missing, twice])).toBe(`kites.yaml:12:13
error[unit-missing]: a volume needs a unit
  12 |     volume: 6
     |             ^
  help: write 6 L or 6000 mL

a.yaml:3:3
warning[defined-twice]: tanks.bench is defined in two files
   3 |   bench:
     |   ^^^^^
  b.yaml:7:3: first defined here
   7 |   bench:
     |   ^^^^^

1 error, 1 warning
`);
  expect(renderText([])).toBe("");
});

test("renderText colours only where it is asked to, and no text of the file can colour or move anything", () => {
  expect(renderText([missing])).not.toContain("\u001b");
  expect(renderText([missing], { colour: true })).toContain("\u001b[31m^\u001b[0m");
  const sly = {
    ...missing,
    message: "\u001b[2Jgone",
    spans: [{ ...span, text: "\u001b[31m\u202evolume: 6" }],
  };
  for (const text of [renderText([sly]), renderPlain([sly])])
    for (const sign of ["\u001b", "\u202e"]) expect(text).not.toContain(sign);
});

test("renderText fits the columns, and keeps the fault in sight on a long line", () => {
  const long: Span = { ...span, column: 501, length: 4, text: `${"x".repeat(500)}here${"y".repeat(500)}` };
  const text = renderDiagnostic({
    ...missing,
    message: "word ".repeat(60),
    help: "word ".repeat(60),
    spans: [long],
  });
  for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  const [source, marks] = text.split("\n").filter((line) => /^ {2}12 \||^ {5}\|/.test(line));
  expect(source!.slice(marks!.indexOf("^"), marks!.lastIndexOf("^") + 1)).toBe("here");
  for (const line of renderDiagnostic({ ...missing, spans: [long] }, { columns: 50 }).split("\n"))
    expect(line.length).toBeLessThanOrEqual(50);
});

test("the marks are under the fault where characters before it are two columns wide", () => {
  const wide: Span = { ...span, column: 5, length: 2, text: "染料: 6L" };
  expect(renderDiagnostic({ ...missing, spans: [wide] })).toContain("  12 | 染料: 6L\n     |       ^^");
});

test("renderPlain says all of it in sentences without marks", () => {
  expect(renderPlain([missing, twice])).toBe(
    "Error in kites.yaml, line 12, column 13: a volume needs a unit. At fault: 6. Help: write 6 L or 6000 mL. Code: unit-missing.\n" +
      "Warning in a.yaml, line 3, column 3: tanks.bench is defined in two files. At fault: bench. See also b.yaml, line 7: first defined here. Code: defined-twice.\n",
  );
});

test("renderJson keeps every field under a versioned name", () => {
  expect(JSON.parse(renderJson([missing]))).toEqual({
    schema: "dipwright/diagnostics@1",
    diagnostics: [missing],
  });
});

test("renderText marks a fault in the middle of a very long line", () => {
  const text = `${"a".repeat(5000)}X${"b".repeat(500_000)}`;
  const far: Span = { file: "long.yaml", line: 1, column: 5001, length: 1, text };
  const [, , line, marks] = renderText([{ ...missing, spans: [far] }], { columns: 80 }).split("\n");
  expect(line!.length).toBeLessThanOrEqual(80);
  expect(line).toMatch(/^ {3}1 \| \.\.\.a+Xb+\.\.\.$/);
  expect(marks!.indexOf("^")).toBe(line!.indexOf("X"));
});
