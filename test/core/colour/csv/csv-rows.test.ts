import { expect, test } from "vitest";
import { pairColumnNames, pairReader } from "../../../../src/core/colour/csv/pairs-csv.js";
import { type ReflectanceFile, readReflectance } from "../../../../src/core/colour/csv/reflectance-csv.js";
import { type CsvHeader, csvHeader } from "../../../../src/core/csv/csv-header.js";
import { csvNumbers } from "../../../../src/core/csv/csv-number.js";

const said = (faults: readonly { readonly message: string }[]): string[] =>
  faults.map(({ message }) => message);
const headed = (fields: readonly string[]): CsvHeader => {
  const header = csvHeader({ row: 1, fields });
  if (!header.ok) expect.fail(said(header.faults).join());
  return header.value;
};
const pair = (row: number, ...cells: readonly string[]) =>
  pairReader(headed(pairColumnNames), csvNumbers())(cells, row);

test("pairReader returns two colours, with a point or a comma, from columns in any order", () => {
  const value = { standard: [50, 0.5, 0], sample: [51, 0, -1.25] };
  expect(pair(2, "50", ".5", "0", "51", "0", "-1.25")).toMatchObject({ ok: true, value });
  expect(pair(2, "50", "0,5", "0", "51", "0", "-1,25")).toMatchObject({ ok: true, value });
  const other = pairReader(headed(["b2", "note", "a2", "L2", "b1", "a1", "L1"]), csvNumbers());
  expect(other(["-1.25", "x", "0", "51", "0", ".5", "50"], 2)).toMatchObject({ ok: true, value });
});

test("pairReader names row and column of every fault", () => {
  expect(pair(7, "50", "0", "0", "51", "0").faults).toMatchObject([
    { code: "csv-row-short", path: ["row", 7, "b2"] },
  ]);
  expect(said(pair(8, "50", "x", "0", "51", "", "0").faults)).toEqual([
    'row 8, column a1: "x" is not a number',
    "row 8, column a2: the cell is empty",
  ]);
  expect(said(pair(9, "150", "0", "0", "51", "0", "300").faults)).toEqual([
    "row 9, column L1: L must lie in 0 to 100, not 150",
    "row 9, column b2: b must lie in -200 to 200, not 300",
  ]);
  expect(pair(10, "50", "0", "0", "51", "0", "0", "1").faults).toMatchObject([{ code: "csv-row-long" }]);
});

const grid = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
function read(header: readonly string[], rows: readonly (readonly string[])[]): ReflectanceFile {
  const reader = readReflectance(headed(header), csvNumbers());
  if (!reader.ok) expect.fail(said(reader.faults).join());
  rows.forEach((row, i) => {
    reader.value.take({ fields: row, row: i + 2 });
  });
  return reader.value.end();
}
const table = (change: (nm: number) => readonly string[] | undefined = () => undefined) =>
  grid.map((nm) => change(nm) ?? [`${nm}`, "0.25", "0.5"]);

test("readReflectance returns each sample with its first wavelength and step", () => {
  const file = read(["wavelength_nm", "one", "two"], [["390", "", "0.5"], ...table()]);
  expect(file.faults).toEqual([]);
  expect(file.samples).toEqual([
    { name: "one", spectrum: { firstNm: 400, stepNm: 10, reflectance: Array(31).fill(0.25) } },
    { name: "two", spectrum: { firstNm: 390, stepNm: 10, reflectance: Array(32).fill(0.5) } },
  ]);
});

test.each([
  ["over 1", "1.2", "row 7, column one: reflectance 1.2 is over 1"],
  ["negative", "-0.1", "row 7, column one: reflectance -0.1 is below 0"],
  ["no number", "n/a", 'row 7, column one: "n/a" is not a number'],
  ["empty in the middle", "", "row 7, column one: the cell is empty"],
])("readReflectance keeps the other sample where one value is %s", (_, cell, message) => {
  const file = read(
    ["wavelength_nm", "one", "two"],
    table((nm) => (nm === 450 ? ["450", cell, "0.5"] : undefined)),
  );
  expect(said(file.faults)).toEqual([message]);
  expect(file.samples.map(({ name }) => name)).toEqual(["two"]);
});

test("readReflectance says once that a column is in per cent", () => {
  const file = read(
    ["wavelength_nm", "one", "two"],
    table((nm) => [`${nm}`, "25", "0.5"]),
  );
  expect(file.faults).toMatchObject([
    {
      code: "reflectance-percent",
      path: ["row", 2, "one"],
      message: "row 2, column one: reflectance 25 looks like percent (and 30 more in this column)",
    },
  ]);
  expect(file.samples).toHaveLength(1);
});

test("readReflectance names the row that is short of a column and keeps the other sample", () => {
  const file = read(
    ["wavelength_nm", "one", "two"],
    table((nm) => (nm === 500 ? ["500", "0.25"] : undefined)),
  );
  expect(said(file.faults)).toEqual(["row 12: the row ends before column two"]);
  expect(file.samples.map(({ name }) => name)).toEqual(["one"]);
});

test("readReflectance names the column that does not span 400 to 700 nm", () => {
  const file = read(
    ["wavelength_nm", "one", "two"],
    table((nm) => (nm > 680 ? [`${nm}`, "", "0.5"] : undefined)),
  );
  expect(said(file.faults)).toEqual(["column one spans 400 to 680 nm"]);
  expect(file.samples.map(({ name }) => name)).toEqual(["two"]);
});

test.each([
  ["out of order", [400, 420, 410], "row 4, column wavelength_nm: 410 nm comes after 420 nm"],
  ["doubled", [400, 410, 410], "row 4, column wavelength_nm: 410 nm comes after 410 nm"],
  ["missing", [400, 410, 430], "row 4, column wavelength_nm: 420 nm is missing before 430 nm"],
  ["off the grid", [400, 410, 412], "row 4, column wavelength_nm: 412 nm is not a multiple of 5 nm"],
  ["too far apart", [400, 420, 440], "row 3, column wavelength_nm: 420 nm follows 400 nm"],
])("readReflectance returns no sample where wavelengths are %s, and names the row", (_, nm, message) => {
  const file = read(
    ["wavelength_nm", "one"],
    nm.map((at) => [`${at}`, "0.5"]),
  );
  expect(said(file.faults)).toContain(message);
  expect(file.samples).toEqual([]);
});

test.each(["wavelength_nm", "Wavelength", "wavelength (nm)", "nm"])(
  "readReflectance takes %s for the column of wavelengths",
  (name) => {
    expect(
      read(
        ["one", name],
        table((nm) => ["0.5", `${nm}`]),
      ).samples,
    ).toMatchObject([{ name: "one" }]);
  },
);

test("readReflectance takes percent where the column says so", () => {
  const rows = table((nm) => [`${nm}`, "13.5", "0.5"]);
  const file = read(["wavelength_nm", "one_percent", "two"], rows);
  expect(file.samples.map(({ spectrum }) => spectrum.reflectance[0])).toEqual([0.135, 0.5]);
  const over = read(
    ["wavelength_nm", "one %", "two"],
    table((nm) => [`${nm}`, nm === 450 ? "100.5" : "100", "0.5"]),
  );
  expect(said(over.faults)).toEqual(["row 7, column one %: reflectance 100.5 is over 100"]);
});

test("readReflectance refuses a header without wavelengths, without samples or without a name", () => {
  const code = (...names: readonly string[]) =>
    readReflectance(headed(names), csvNumbers()).faults.map((fault) => fault.code);
  expect(code("length", "one")).toEqual(["csv-column-missing"]);
  expect(code("wavelength_nm")).toEqual(["reflectance-no-sample"]);
  expect(code("wavelength_nm", "one", "")).toEqual(["csv-column-name"]);
});

test("readReflectance of an empty file says that the columns hold nothing", () => {
  expect(said(read(["wavelength_nm", "one"], []).faults)).toEqual(["column one holds no value"]);
});
