import { expect, test } from "vitest";
import { readCsv } from "../../../../src/core/csv/read-csv.js";
import { columnMeaning } from "../../../../src/core/uptake/fit/table-columns.js";
import { readUptakeTable } from "../../../../src/core/uptake/fit/uptake-table.js";

const readTable = (text: string, column?: string) => {
  const csv = readCsv(text);
  if (!csv.ok) expect.fail(csv.faults[0]!.message);
  return readUptakeTable(csv.value, column);
};
const faultsOf = (text: string) => readTable(text).faults.map(({ code, path }) => [code, ...path]);

test("time and uptake are read in seconds with their row", () => {
  const table = readTable("\uFEFFtime_min, uptake \n0.5,1e-1\n\n 2 ,+.75");
  expect(table).toMatchObject({
    ok: true,
    faults: [],
    value: {
      timeColumn: "time_min",
      timeUnit: { name: "min", seconds: 60 },
      uptakeColumn: "uptake",
      meaning: "uptake",
      points: [
        { seconds: 30, uptake: 0.1, row: 2 },
        { seconds: 120, uptake: 0.75, row: 4 },
      ],
    },
  });
});

test.each([
  ["time_s", 1],
  ["Time (min)", 60],
  ["time [h]", 3600],
  ["t_days", 86400],
  ["seconds", 1],
  ["Minutes", 60],
])("%s is a time column of %d s", (name, secondsPerUnit) => {
  expect(columnMeaning(name)).toMatchObject({ kind: "time", secondsPerUnit });
});

test.each([
  ["K/S", "ks"],
  ["k_s", "ks"],
  ["KS 560 nm", "ks"],
  ["exhaustion_%", "exhaustion"],
  ["Uptake mg per g", "uptake"],
  ["time", "time-without-unit"],
  ["t", "time-without-unit"],
  ["s", "other"],
  ["note", "other"],
])("%s is a column of kind %s", (name, kind) => {
  expect(columnMeaning(name).kind).toBe(kind);
});

test("an uptake column with a name of its own is taken where it is the only one, or where it is asked for", () => {
  expect(readTable("time_s,q\n1,2").ok).toBe(true);
  expect(faultsOf("time_s,q,note\n1,2,3")).toEqual([["table-uptake-column", "row", 1]]);
  const asked = readTable("time_s,q,note\n1,2,3", "q");
  expect(asked.ok && asked.value.points).toEqual([{ seconds: 1, uptake: 2, row: 2 }]);
  const known = readTable("sample,exhaustion,time_s\n7,20,60");
  expect(known.ok && known.value.points[0]).toEqual({ seconds: 60, uptake: 20, row: 2 });
});

test("a time column without a unit, none, or two is an error in the header row that says how to name it", () => {
  for (const header of ["time,uptake", "uptake,note", "time_s,time_min,uptake"]) {
    const { faults } = readTable(`${header}\n1,2,3`);
    expect(faults).toMatchObject([{ code: "table-time-column", path: ["row", 1] }]);
    expect(faults[0]!.help).toContain("time_s");
  }
});

test("no header, a column twice and several uptake columns are errors", () => {
  expect(faultsOf("")).toEqual([["csv-empty", "row", 1]]);
  expect(faultsOf("time_s,ks,ks\n1,2,3")).toEqual([["csv-column-twice", "row", 1, "ks"]]);
  expect(faultsOf("time_s,ks,exhaustion\n1,2,3")).toEqual([["table-uptake-column", "row", 1]]);
});

test("every bad cell is named with its row and column, all of them in one run", () => {
  expect(faultsOf("time_s,uptake\n10,1\n20 s,abc\n30,\n40,4,5\n50,NaN")).toEqual([
    ["csv-number", "row", 3, "time_s"],
    ["csv-number", "row", 3, "uptake"],
    ["csv-cell-empty", "row", 4, "uptake"],
    ["csv-row-long", "row", 5],
    ["csv-number", "row", 6, "uptake"],
  ]);
});

test("a decimal comma is read, and a second way to write numbers refused", () => {
  const table = readTable("time_s;uptake\n10;1,5");
  expect(table.ok && table.value.points[0]!.uptake).toBe(1.5);
  expect(readTable("time_s;uptake\n10;1,5\n20;2.5").faults[0]!.help).toContain("decimal comma");
  expect(readTable("time_s,uptake\n10,1,5").faults[0]!.help).toContain("decimal comma");
});

test("K/S is counted from the undyed part where the table has it, and a warning says either way", () => {
  const table = readTable("time_s,ks\n0,0.04\n0,0.06\n60,1.05");
  expect(table.ok && table.value.points.map(({ uptake }) => uptake)).toEqual([
    expect.closeTo(-0.01, 12),
    expect.closeTo(0.01, 12),
    expect.closeTo(1, 12),
  ]);
  expect(table.faults).toMatchObject([{ code: "table-ks-undyed", severity: "warning" }]);
  expect(faultsOf("time_s,ks\n60,1.05")).toEqual([["table-ks-undyed"]]);
  expect(faultsOf("time_s,ks\n0,0\n60,1.05")).toEqual([]);
});
