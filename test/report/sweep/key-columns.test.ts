import { expect, test } from "vitest";
import { keyColumn } from "../../../src/report/sweep/key-columns.js";

/** The column's name, then its cells. */
const written = (key: string, ...values: readonly string[]) => {
  const { column, cells } = keyColumn({ key, names: key.split("."), values });
  return [column.key, ...values.map((text) => cells.get(text))];
};

test("keyColumn gives quantities as numbers, their unit in the column's name", () => {
  for (const [key, values, name, ...cells] of [
    ["handling.drain", ["10 s", "20.5 s"], "handling.drain_s", 10, 20.5],
    ["tanks.six.volume", ["5500 mL", "6000 ml"], "tanks.six.volume_mL", 5500, 6000],
    ["dyes.teal.temperature", ["80 °C", "75C"], "dyes.teal.temperature_C", 80, 75],
    ["handling.dragOut", ["0.8 mL/dm2", "1 mL per dm2"], "handling.dragOut_mL_per_dm2", 0.8, 1],
    ["rates.labour", ["30 /h", "34 /h"], "rates.labour_per_h", 30, 34],
    ["yield", ["97 %", "95.5 percent"], "yield_percent", 97, 95.5],
    ["tanks.six.volume", ["2 US gal", "3 gal"], "tanks.six.volume_US_gal", 2, 3],
  ] as const)
    expect(written(key, ...values)).toEqual([name, ...cells]);
});

test("keyColumn gives quantities of several units in the one that the reader takes", () => {
  expect(written("handling.drain", "10 s", "1 min", "1 min 30 s")).toEqual(["handling.drain_s", 10, 60, 90]);
  expect(written("dyes.teal.temperature", "80 °C", "167 °F")).toEqual(["dyes.teal.temperature_C", 80, 75]);
});

test("keyColumn gives dilutions in percent, those of powders in g/L, and no spreadsheet takes them for times", () => {
  expect(written("dyes.teal.dilution", "1:9", "1:7", "8 %", "100 mL/L")).toEqual([
    "dyes.teal.dilution_percent",
    10,
    12.5,
    8,
    10,
  ]);
  expect(written("dyes.sand.dilution", "20 g/L", "25 g/L")).toEqual(["dyes.sand.dilution_g_per_L", 20, 25]);
});

test("keyColumn gives plain numbers as numbers", () => {
  expect(written("orders.0.quantity", "5", "1e2", "0.50")).toEqual(["orders.0.quantity", 5, 100, 0.5]);
});

test("keyColumn leaves what has no number as text, and keeps spreadsheets from making times, dates and numbers of it", () => {
  expect(written("tanks.six.cover", "none", "lid")).toEqual(["tanks.six.cover", "none", "lid"]);
  expect(written("startAt", "08:00", "7:30")).toEqual(["startAt", "'08:00", "'7:30"]);
  expect(written("baths.0.tank", "1-2", "1/2", "1.2.3", "1.2 a")).toEqual([
    "baths.0.tank",
    "'1-2",
    "'1/2",
    "'1.2.3",
    "1.2 a",
  ]);
  expect(written("dyes.teal.dilution", "1:9", "1/9", "1:8 ± 5 %")).toEqual([
    "dyes.teal.dilution_percent",
    10,
    "'1/9",
    "1:8 ± 5 %",
  ]);
  expect(written("tanks.six.volume", "6 L", "6", "6 kg", "7 L")).toEqual([
    "tanks.six.volume_L",
    6,
    "'6",
    "6 kg",
    7,
  ]);
});
