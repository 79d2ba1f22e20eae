import { expect, test } from "vitest";
import { csv } from "../../src/report/format/csv.js";
import { markdown } from "../../src/report/format/markdown.js";
import { coloured, plain, trueColoured } from "../../src/report/format/paint.js";
import { textTable } from "../../src/report/format/text-table.js";
import type { Table } from "../../src/report/table.js";

const table: Table = {
  columns: [
    { key: "colour", title: "colour shown", swatch: true },
    { key: "name", title: "name" },
    { key: "last", title: "last", swatch: true },
  ],
  rows: [
    ["#d9603b", "coral", "#000000"],
    [null, "none", "not a hex"],
  ],
};
const block = (rgb: string): string => `\u001b[48;2;${rgb}m       \u001b[49m`;

test("textTable shows a swatch as a block as wide as its hex on a terminal with every colour", () => {
  const lines = textTable(table, 80, trueColoured);
  expect(lines.slice(1)).toEqual([
    `${block("217;96;59")}       coral  ${block("0;0;0")}`,
    "              none   not a hex",
  ]);
});

test("textTable leaves the hex of a swatch where colour is not wanted or too few can be shown", () => {
  const expected = ["#d9603b       coral  #000000", "              none   not a hex"];
  expect(textTable(table, 80, plain).slice(1)).toEqual(expected);
  expect(textTable(table, 80, coloured).slice(1)).toEqual(expected);
});

test("textTable shows a swatch in a table written row by row", () => {
  expect(textTable(table, 18, trueColoured)).toContain(`last    ${block("0;0;0")}`);
});

test("csv and markdown keep the hex of a swatch", () => {
  expect(csv(table, { delimiter: ",", decimal: ".", bom: false })).toContain("#d9603b,coral,#000000");
  expect(markdown([{ kind: "table", table }])).toContain("| #d9603b | coral | #000000 |");
});
