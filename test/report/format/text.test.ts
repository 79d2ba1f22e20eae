import fc from "fast-check";
import { expect, test } from "vitest";
import { coloured, plain } from "../../../src/report/format/paint.js";
import { text } from "../../../src/report/format/text.js";
import { textTable } from "../../../src/report/format/text-table.js";
import { widthOf, wrap } from "../../../src/report/format/wrap.js";
import type { Block } from "../../../src/report/report.js";
import type { Table } from "../../../src/report/table.js";

const sample: Table = {
  columns: [
    { key: "load", title: "load" },
    { key: "what", title: "what goes in" },
    { key: "dip_s", title: "dip time", unit: "s", digits: (n) => n.toFixed(0), tone: "strong" },
  ],
  rows: [
    [1, "24 hooks, light coral, on a white base", 42.4],
    [2, "ветка 漢字", 118],
    [3, null, null],
  ],
};

test("textTable sets numbers right and text left, and counts wide letters as two columns", () => {
  expect(textTable(sample, 80, plain)).toEqual([
    "load  what goes in                            dip time s",
    "   1  24 hooks, light coral, on a white base          42",
    "   2  ветка 漢字                                     118",
    "   3",
  ]);
});

test("textTable breaks text where the width is short, never a number", () => {
  expect(textTable(sample, 34, plain)).toEqual([
    "load  what goes in      dip time s",
    "   1  24 hooks, light           42",
    "      coral, on a",
    "      white base",
    "   2  ветка 漢字               118",
    "   3",
  ]);
});

test("textTable breaks headers, and writes a table row by row where no width holds it", () => {
  expect(textTable(sample, 26, plain).slice(0, 4)).toEqual([
    "                       dip",
    "load  what goes in  time s",
    "   1  24 hooks,         42",
    "      light coral,",
  ]);
  expect(textTable(sample, 20, plain).slice(0, 6)).toEqual([
    "load    1",
    "what    24 hooks,",
    "goes    light coral,",
    "in      on a white",
    "        base",
    "dip     42",
  ]);
});

test("textTable paints cells after they are set, so that the width stays the same", () => {
  const painted = textTable(sample, 80, coloured);
  expect(painted.join("")).toContain("\u001b[1m");
  expect(painted.map((line) => widthOf(line.trimEnd())).slice(1, 3)).toEqual(
    textTable(sample, 80, plain).map(widthOf).slice(1, 3),
  );
});

test("no line of a text report is wider than the terminal from 60 columns on", () => {
  const cell = fc.oneof(
    fc.string({ unit: "grapheme", maxLength: 60 }),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.constant(null),
  );
  const tables = fc.integer({ min: 1, max: 12 }).chain((count) =>
    fc.record({
      columns: fc.array(fc.record({ key: fc.constant("k"), title: fc.string({ maxLength: 20 }) }), {
        minLength: count,
        maxLength: count,
      }),
      rows: fc.array(fc.array(cell, { minLength: count, maxLength: count }), { maxLength: 4 }),
    }),
  );
  const block: fc.Arbitrary<Block> = fc.oneof(
    tables.map((table) => ({ kind: "table", table }) as const),
    fc.record({
      kind: fc.constant("heading" as const),
      level: fc.constantFrom(1 as const, 2 as const),
      text: fc.string({ maxLength: 120 }),
    }),
    fc.record({
      kind: fc.constant("paragraph" as const),
      text: fc.string({ unit: "grapheme", maxLength: 300 }),
    }),
    fc.record({ kind: fc.constant("list" as const), items: fc.array(fc.string({ maxLength: 150 })) }),
  );
  fc.assert(
    fc.property(fc.array(block, { maxLength: 4 }), fc.integer({ min: 60, max: 140 }), (blocks, width) => {
      for (const line of text(blocks, width, plain).split("\n"))
        expect(widthOf(line)).toBeLessThanOrEqual(width);
    }),
    { numRuns: 300 },
  );
});

test("wrap keeps a number with its unit on one line", () => {
  expect(wrap("water comes to 5.26 L at 20 °C", 19)).toEqual(["water comes to", "5.26 L at 20 °C"]);
  expect(wrap("the dip takes 42 seconds", 16)).toEqual(["the dip takes 42", "seconds"]);
});

test("text sets a minor heading close to what follows and parts other blocks by one empty line", () => {
  const blocks: Block[] = [
    { kind: "heading", level: 1, text: "Bath" },
    { kind: "paragraph", text: "One." },
    { kind: "heading", level: 2, text: "Steps" },
    { kind: "list", items: ["a", "b"], ordered: true },
  ];
  expect(text(blocks, 80, plain)).toBe("Bath\n====\n\nOne.\n\nSteps\n1. a\n2. b\n");
});
