import fc from "fast-check";
import { expect, test } from "vitest";
import { readRows } from "../../../src/cli/csv/read-rows.js";
import type { CsvRow } from "../../../src/core/csv/csv-format.js";
import { readCsv } from "../../../src/core/csv/read-csv.js";
import type { Fault } from "../../../src/core/fault.js";

async function* pieces(text: string, ...cuts: readonly number[]): AsyncGenerator<Uint8Array> {
  const bytes = Buffer.from(text);
  const ends = [...cuts.map((cut) => Math.min(cut, bytes.length)).sort((a, b) => a - b), bytes.length];
  let from = 0;
  for (const end of ends) {
    yield bytes.subarray(from, end);
    from = end;
  }
}

async function read(text: string, ...cuts: readonly number[]): Promise<{ rows: CsvRow[]; faults: Fault[] }> {
  const faults: Fault[] = [];
  const rows: CsvRow[] = [];
  for await (const some of readRows(pieces(text, ...cuts), (fault) => faults.push(fault))) rows.push(...some);
  return { rows, faults };
}

test("readRows gives rows with their numbers, blank ones counted and left out", async () => {
  expect(await read('a,b\r\n1,"x, y"\r\n\r\n,\r\n3,4')).toEqual({
    rows: [
      { row: 1, fields: ["a", "b"] },
      { row: 2, fields: ["1", "x, y"] },
      { row: 5, fields: ["3", "4"] },
    ],
    faults: [],
  });
});

test("readRows gives nothing for an empty file", async () => {
  expect(await read("")).toEqual({ rows: [], faults: [] });
  expect(await read("\n\n")).toEqual({ rows: [], faults: [] });
});

test("readRows drops a byte order mark and takes the delimiter of the header", async () => {
  expect((await read("\ufeffa;b\n1,5;2\n")).rows).toEqual([
    { row: 1, fields: ["a", "b"] },
    { row: 2, fields: ["1,5", "2"] },
  ]);
  expect((await read("a\tb\n1\t2\n")).rows[1]?.fields).toEqual(["1", "2"]);
});

test("readRows gives the same rows however the file is cut", async () => {
  const text = `name;L1\n${Array.from({ length: 60 }, (_, i) => `"ветка ""${i}""\n漢";${i},5\n`).join("")}`;
  const whole = await read(text);
  expect(whole.rows.length).toBe(61);
  await fc.assert(
    fc.asyncProperty(fc.array(fc.nat(Buffer.byteLength(text)), { maxLength: 40 }), async (cuts) => {
      expect(await read(text, ...cuts)).toEqual(whole);
    }),
    { numRuns: 60 },
  );
});

test("readRows gives the rows before a quote that is never closed, and says where it is", async () => {
  const { rows, faults } = await read('a,b\n1,2\n3,"4\n5,6\n');
  expect(rows.map(({ row }) => row)).toEqual([1, 2]);
  expect(faults.map(({ code, message }) => [code, message])).toEqual([
    [
      "csv-quote",
      "row 3: a quote is not closed, or the row is longer than 1024 KiB; nothing after it was read",
    ],
  ]);
});

test("readRows stops at a row longer than it may be", async () => {
  const { rows, faults } = await read(`a,b\n1,2\n3,"${"x".repeat(3e6)}`, 1e6, 2e6);
  expect([rows.length, faults[0]?.code]).toEqual([2, "csv-quote"]);
});

test("readRows gives the same rows as readCsv, whatever ends the lines", async () => {
  const line = fc.stringMatching(/^(?:[ab";1.,]|é){0,6}$/).map((text) => `"${text.replaceAll('"', '""')}",2`);
  const end = fc.constantFrom("\n", "\r\n", "\r");
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(fc.oneof(line, fc.constant("")), end), { maxLength: 12 }),
      fc.array(fc.nat(80), { maxLength: 5 }),
      async (lines, cuts) => {
        const text = lines.flat().join("");
        const csv = readCsv(text);
        if (!csv.ok) expect.fail(csv.faults[0]!.message);
        const { header, rows } = csv.value;
        expect(await read(text, ...cuts)).toEqual({
          rows: header === undefined ? [] : [header, ...rows],
          faults: [],
        });
      },
    ),
    { numRuns: 200 },
  );
});

test("readRows reads a CRLF header over LF rows", async () => {
  expect((await read("a;b\r\n1;2\n3;4\n")).rows.map(({ fields }) => fields)).toEqual([
    ["a", "b"],
    ["1", "2"],
    ["3", "4"],
  ]);
});

test("readRows stops where the bytes are not text in UTF-8", async () => {
  async function* bytes(...all: readonly number[][]) {
    for (const some of all) yield Uint8Array.from(some);
  }
  for (const wrong of [
    [0x61, 0xe9, 0x2c],
    [0x61, 0, 0x2c],
  ]) {
    const faults: Fault[] = [];
    for await (const _ of readRows(bytes([0x61, 0x0a], wrong), (fault) => faults.push(fault)));
    expect(faults.map(({ code }) => code)).toEqual(["csv-not-text"]);
  }
});
