import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { expect, test } from "vitest";
import type { CsvStyle } from "../../../src/report/csv-style.js";
import { csv } from "../../../src/report/format/csv.js";
import type { Table } from "../../../src/report/table.js";
import { decimals } from "../../../src/report/words/digits.js";

const style: CsvStyle = { delimiter: ",", decimal: ".", bom: false };
const table = (...rows: Table["rows"]): Table => ({
  columns: [
    { key: "order", title: "order" },
    { key: "cost_EUR", title: "cost", unit: "EUR", digits: (n) => decimals(n, 2) },
  ],
  rows,
});

test("csv gives a header row with units, CRLF, quotes where needed and empty cells for nothing", () => {
  expect(csv(table(["hook", 1.5], ['a "b", c', null], [null, -2]), style)).toBe(
    'order,cost_EUR\r\nhook,1.50\r\n"a ""b"", c",\r\n,-2.00\r\n',
  );
});

test("csv gives the header alone where there are no rows", () => {
  expect(csv(table(), { ...style, bom: true })).toBe("\ufefforder,cost_EUR\r\n");
});

test("csv writes a decimal comma in numbers and leaves points in text", () => {
  expect(csv(table(["v1.2", 1234.5]), { ...style, decimal: ",", delimiter: ";" })).toBe(
    "order;cost_EUR\r\nv1.2;1234,50\r\n",
  );
});

test("csv makes text harmless that a spreadsheet would run, and leaves negative numbers alone", () => {
  const bad = [
    "=1+1",
    "+1+1",
    "-1+1",
    "@sum(A1)",
    "\t=1",
    "\r=1",
    "\n=1",
    "\n\t=1",
    " +1+1",
    " \r\n＝1",
    "＝1",
  ];
  const rows = parse(csv(table(...bad.map((text) => [text, -1] as const)), style)) as string[][];
  expect(rows.slice(1)).toEqual(bad.map((text) => [`'${text}`, "-1.00"]));
  const numbers = ["-1", "+1.50", "-0,5", "-1e3"];
  expect(parse(csv(table(...numbers.map((text) => [text, -1] as const)), style)).slice(1)).toEqual(
    numbers.map((text) => [text, "-1.00"]),
  );
});

test("csv starts with a byte order mark when asked", () => {
  expect(csv(table(["a", 1]), { ...style, bom: true })).toBe("\ufefforder,cost_EUR\r\na,1.00\r\n");
});

const lineEnds = ["\r\n", "\n", "\r", "\u0085", "\u2028", "\u2029", "\v", "\f"];

test("csv quotes a cell or a header that holds any line end, in CSV and TSV", () => {
  for (const delimiter of [",", "\t"])
    for (const end of lineEnds) {
      const columns = [
        { key: `a${end}b`, title: "" },
        { key: "c", title: "" },
      ];
      expect(csv({ columns, rows: [[`x${end}y`, null]] }, { ...style, delimiter })).toBe(
        `"a${end}b"${delimiter}c\r\n"x${end}y"${delimiter}\r\n`,
      );
    }
});

test("csv writes a row of one empty cell as quotes, since most readers skip an empty line", () => {
  const columns = [{ key: "date", title: "date" }];
  expect(csv({ columns, rows: [[null], [""], ["a"]] }, style)).toBe('date\r\n""\r\n""\r\na\r\n');
});

test("csv reads back as the same cells for any text and number, delimiter and decimal sign", () => {
  const sign = fc.oneof(
    fc.string({ unit: "grapheme" }),
    fc.constantFrom(...lineEnds, '"', ",", ";", "\t", " "),
  );
  const text = fc
    .array(sign, { maxLength: 6 })
    .map((signs) => signs.join(""))
    .filter((value) => !/^(?:[\t\r\n]|\s*[=+\-@＝＋－＠])/.test(value));
  const row = fc.tuple(
    text,
    fc.integer({ min: -1e6, max: 1e6 }).map((n) => n / 100),
  );
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 1 }),
      text,
      fc.constantFrom(",", ";", "\t", "|"),
      fc.constantFrom(".", ","),
      (rows, key, delimiter, decimal) => {
        const columns = [{ key, title: "" }, table().columns[1]!];
        const written = csv({ columns, rows }, { delimiter, decimal: decimal as "." | ",", bom: false });
        // Each of the line ends ends a row here, so that a bare one in a cell would tear it.
        const read = parse(written, { delimiter, record_delimiter: lineEnds }) as string[][];
        expect(read).toEqual([
          [key, "cost_EUR"],
          ...rows.map(([name, cost]) => [name, decimals(cost, 2).replace(".", decimal)]),
        ]);
      },
    ),
    { numRuns: 500 },
  );
});
