import { expect, test } from "vitest";
import { pairColumns, pairRow } from "../../../../src/core/colour/csv/pairs-csv.js";
import { type ReflectanceFile, readReflectance } from "../../../../src/core/colour/csv/reflectance-csv.js";

const columns = [0, 1, 2, 3, 4, 5];
const said = (faults: readonly { readonly message: string }[]): string[] =>
  faults.map(({ message }) => message);

test("pairColumns finds the columns in any order and names the missing and the doubled", () => {
  expect(pairColumns(["b2", " a2", "L2", "note", "b1", "a1", "L1"])).toMatchObject({
    ok: true,
    value: [6, 5, 4, 2, 1, 0],
  });
  expect(said(pairColumns(["L1", "a1", "b1", "L2", "a2", "a2"]).faults)).toEqual([
    "row 1: column a2 stands there 2 times",
    "row 1: there is no column b2",
  ]);
});

test("pairRow returns two colours, with a point or a comma", () => {
  const value = { standard: [50, 0.5, 0], sample: [51, 0, -1.25] };
  expect(pairRow(["50", ".5", "0", "51", "0", "-1.25"], columns, 2, "point")).toMatchObject({
    ok: true,
    value,
  });
  expect(pairRow(["50", "0,5", "0", "51", "0", "-1,25"], columns, 2, "comma")).toMatchObject({
    ok: true,
    value,
  });
});

test("pairRow names row and column of every fault", () => {
  const short = pairRow(["50", "0", "0", "51", "0"], columns, 7, "point");
  expect(short.faults).toMatchObject([{ code: "pairs-row-short", path: [7, "b2"] }]);
  const wrong = pairRow(["50", "x", "0", "51", "", "0"], columns, 8, "point");
  expect(said(wrong.faults)).toEqual([
    'row 8, column a1: "x" is no number',
    'row 8, column a2: "" is no number',
  ]);
  const high = pairRow(["150", "0", "0", "51", "0", "300"], columns, 9, "point");
  expect(said(high.faults)).toEqual([
    "row 9, column L1: L must lie in 0 to 100, not 150",
    "row 9, column b2: b must lie in -200 to 200, not 300",
  ]);
});

const grid = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
function read(header: readonly string[], rows: readonly (readonly string[])[]): ReflectanceFile {
  const reader = readReflectance(header, "point");
  if (!reader.ok) expect.fail(said(reader.faults).join());
  rows.forEach((row, i) => {
    reader.value.take(row, i + 2);
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
  ["no number", "n/a", 'row 7, column one: "n/a" is no number'],
  ["empty in the middle", "", "row 7, column one: no value"],
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
      path: [2, "one"],
      message: "row 2, column one: reflectance 25 looks like per cent (and 30 more in this column)",
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
  ["off the grid", [400, 410, 412], "row 4, column wavelength_nm: 412 nm is no multiple of 5 nm"],
  ["too far apart", [400, 420, 440], "row 3, column wavelength_nm: 420 nm follows 400 nm"],
])("readReflectance returns no sample where wavelengths are %s, and names the row", (_, nm, message) => {
  const file = read(
    ["wavelength_nm", "one"],
    nm.map((at) => [`${at}`, "0.5"]),
  );
  expect(said(file.faults)).toContain(message);
  expect(file.samples).toEqual([]);
});

test("readReflectance refuses a header without wavelengths, without samples or with a name twice", () => {
  expect(readReflectance(["nm", "one"], "point").faults[0]!.code).toBe("wavelength-column-missing");
  expect(readReflectance(["wavelength_nm"], "point").faults[0]!.code).toBe("reflectance-no-sample");
  expect(readReflectance(["wavelength_nm", "one", "one"], "point").faults[0]!.code).toBe(
    "reflectance-column-name",
  );
});

test("readReflectance of an empty file says that the columns hold nothing", () => {
  expect(said(read(["wavelength_nm", "one"], []).faults)).toEqual(["column one holds no value"]);
});
