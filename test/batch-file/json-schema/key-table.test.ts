import { expect, test } from "vitest";
import { keyTable } from "../../../src/batch-file/json-schema/key-table.js";

test("every key says what it means", () => {
  for (const row of keyTable())
    expect([row.path, row.meaning]).toEqual([row.path, expect.stringMatching(/\w/)]);
});

test("the key table lists keys in maps, lists and maps of names, each once", () => {
  const paths = keyTable().map((row) => row.path);
  expect(new Set(paths).size).toBe(paths.length);
  expect(paths).toEqual(
    expect.arrayContaining([
      "batch",
      "rates.electricity",
      "tanks",
      "tanks.NAME.volume",
      "tanks.NAME.equipment.life",
      "dyes.NAME.swatches.ITEM.reflectance",
      "parts.NAME.blank",
      "parts.NAME.blank.NAME",
      "baths.ITEM.start.strength",
      "orders.ITEM.quantity",
      "limits.costPerPart",
    ]),
  );
  expect(keyTable().find((row) => row.path === "tanks.NAME.heaterEfficiency")).toEqual({
    path: "tanks.NAME.heaterEfficiency",
    meaning: "share of the heater's power that reaches the liquor",
    default: "90 %",
    example: "90 %",
    required: false,
  });
});
