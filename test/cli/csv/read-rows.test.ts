import fc from "fast-check";
import { expect, test } from "vitest";
import { type CsvRow, readRows } from "../../../src/cli/csv/read-rows.js";
import { decimalShown, sniffDelimiter } from "../../../src/cli/csv/sniff.js";
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

test("sniffDelimiter takes the sign most used outside quotes, a comma where there is none", () => {
  expect(sniffDelimiter("a,b;c")).toBe(",");
  expect(sniffDelimiter('"a,b,c";b')).toBe(";");
  expect(sniffDelimiter("a\tb\tc")).toBe("\t");
  expect(sniffDelimiter("a")).toBe(",");
});

test("decimalShown tells a decimal comma from a point, and neither from a whole number", () => {
  expect([decimalShown(" -1,5"), decimalShown("1.5e-3"), decimalShown("15"), decimalShown("1,2,3")]).toEqual([
    "comma",
    "point",
    undefined,
    undefined,
  ]);
});
