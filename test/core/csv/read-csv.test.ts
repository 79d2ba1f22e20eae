import { expect, test } from "vitest";
import { cellNumber, extraCells } from "../../../src/core/csv/csv-cell.js";
import { csvHeader } from "../../../src/core/csv/csv-header.js";
import { csvNumbers } from "../../../src/core/csv/csv-number.js";
import { delimiterOf, headerLine } from "../../../src/core/csv/delimiter.js";
import { readCsv } from "../../../src/core/csv/read-csv.js";

function read(text: string) {
  const csv = readCsv(text);
  if (!csv.ok) expect.fail(csv.faults[0]!.message);
  return csv.value;
}
const rows = (text: string) => {
  const { header, rows: below } = read(text);
  return [header, ...below];
};

const wanted = [
  { row: 1, fields: ["time_s", "note"] },
  { row: 2, fields: ["1.5", "a b"] },
  { row: 4, fields: ["2", ""] },
];

test.each([
  ["line feeds", "time_s,note\n1.5,a b\n\n2,\n"],
  ["carriage returns and line feeds", "time_s,note\r\n1.5,a b\r\n\r\n2,"],
  ["carriage returns", "time_s,note\r1.5,a b\r\r2,\r"],
  ["a CRLF header over LF rows", "time_s,note\r\n1.5,a b\n\n2,\n"],
  ["an LF header over CRLF rows", "time_s,note\n1.5,a b\r\n\r\n2,\r\n"],
  ["a byte order mark", "\ufefftime_s,note\n1.5,a b\n\n2,\n"],
  ["semicolons", "time_s;note\n1.5;a b\n;\n2;\n"],
  ["tabs", "time_s\tnote\n1.5\ta b\n\t\n2\t\n"],
  ["quotes", '"time_s","note"\n"1.5","a b"\n\n2,""\n'],
])("readCsv gives the same rows for a file with %s", (_what, text) => {
  expect(rows(text)).toEqual(wanted);
});

test("readCsv takes the first row that holds anything for the header, and counts rows as a spreadsheet does", () => {
  expect(rows("\n;\n\ntime_s;ks\n1;2\n")).toEqual([
    { row: 4, fields: ["time_s", "ks"] },
    { row: 5, fields: ["1", "2"] },
  ]);
  expect(read("")).toMatchObject({ rows: [] });
  expect(read("\n\n").header).toBeUndefined();
});

test("readCsv places a row and a cell in the text, whatever lines the cells before it span", () => {
  const { place } = read('time_s,note\r\n1,"two\nlines"\r\n22 , x y \n');
  expect(place(2)).toEqual({ line: 2, column: 1, length: 6, text: '1,"two' });
  expect(place(3, 0)).toEqual({ line: 4, column: 1, length: 2, text: "22 , x y " });
  expect(place(3, 1)).toEqual({ line: 4, column: 6, length: 3, text: "22 , x y " });
  expect(place(3, 7)).toEqual({ line: 4, column: 1, length: 9, text: "22 , x y " });
});

test("readCsv refuses a quote that is not closed and what is not text, and says where", () => {
  const faults = (text: string) => readCsv(text).faults.map(({ code, path }) => [code, path]);
  expect(faults('a,b\n1,2\n3,"4\n5,6\n')).toEqual([["csv-quote", ["row", 3]]]);
  expect(faults(`a,b\n1,"${"x".repeat(1 << 21)}"\n`)).toEqual([["csv-quote", ["row", 2]]]);
  expect(faults("a,b\0")).toEqual([["csv-not-text", []]]);
  expect(faults("a,\ufffd")).toEqual([["csv-not-text", []]]);
});

test("delimiterOf takes the sign that the header has most often outside quotes, a comma where it has none", () => {
  expect(["a,b;c", '"a,b,c";b', "a\tb\tc", "a"].map(delimiterOf)).toEqual([",", ";", "\t", ","]);
});

test("headerLine is the first line that holds anything", () => {
  expect(headerLine("\ufeff\r\n \r\n a;b\r\nc")).toBe(" a;b");
  expect(headerLine("\n\n")).toBe("");
});

test("csvNumbers keeps to the first decimal mark of a file", () => {
  expect([" -1,5", "1.5", "2e3", "+,5", "1,", "1,2,3", "NaN", "0x1"].map(csvNumbers())).toEqual([
    -1.5,
    undefined,
    2000,
    0.5,
    1,
    undefined,
    undefined,
    undefined,
  ]);
  expect(["15", "1.5e-1", "1,5", ".5", "1."].map(csvNumbers())).toEqual([15, 0.15, undefined, 0.5, 1]);
});

test("csvHeader finds columns in any order and names all that are missing or doubled", () => {
  const header = csvHeader({ row: 1, fields: ["b", " extra", "", "a ", ""] }, ["a", "b"]);
  if (!header.ok) expect.fail("no header");
  expect(header.value.names).toEqual(["b", "extra", "", "a", ""]);
  expect(["a", "b", "c"].map(header.value.at)).toEqual([3, 0, undefined]);
  expect(csvHeader({ row: 3, fields: ["a", "a"] }, ["a", "b"]).faults).toMatchObject([
    { code: "csv-column-twice", path: ["row", 3, "a"], message: "row 3: there are two columns a" },
    { code: "csv-column-missing", path: ["row", 3, "b"], help: "the first row must name a, b" },
  ]);
});

test("cellNumber is the number of a cell, or the fault with its place", () => {
  const at = (cell: string | undefined, help?: string) =>
    cellNumber(cell === undefined ? [] : [cell], 0, 7, "L1", csvNumbers(), help);
  expect(at(" 2.5 ")).toBe(2.5);
  expect(at(undefined)).toMatchObject({ code: "csv-row-short", path: ["row", 7, "L1"] });
  expect(at(" ")).toMatchObject({ code: "csv-cell-empty", message: "row 7, column L1: the cell is empty" });
  expect(at("3 s", "no units")).toMatchObject({
    code: "csv-number",
    message: 'row 7, column L1: "3 s" is not a number',
    help: "no units",
  });
  expect(at(`two\n"lines" ${"x".repeat(99)}`)).toMatchObject({
    message: `row 7, column L1: "two\\n\\"lines\\" ${"x".repeat(18)}…" is not a number`,
  });
  const read = csvNumbers();
  read("1.5");
  expect(cellNumber(["1,5"], 0, 7, "L1", read, "no units")).toMatchObject({
    help: "write a decimal point in every number of the file, or a decimal comma in every one",
  });
});

test("extraCells is a fault only where a cell behind the last column holds something", () => {
  expect(extraCells(["1", "2", " ", ""], 2, 5)).toBeUndefined();
  expect(extraCells(["1", "2", "3"], 2, 5)).toMatchObject({ code: "csv-row-long", path: ["row", 5] });
});
