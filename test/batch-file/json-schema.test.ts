import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { batchJsonSchema } from "../../src/batch-file/json-schema.js";
import { keyTable, keyTableMarkdown } from "../../src/batch-file/key-table.js";
import { readFile } from "./read.js";

const ajv = new Ajv2020({ strict: false, validateFormats: false });
const validate = ajv.compile(batchJsonSchema());

test.each([
  "everything.yaml",
  "everything-workshop.yaml",
  "everything-dyes.yaml",
  "small.yaml",
  "evidence.yaml",
  "small.json",
  "us-units.yaml",
  "plus-minus.yaml",
  "anchors.yaml",
  "diamond.yaml",
])("the JSON Schema accepts %s", (name) => {
  const valid = validate(parse(readFile(`fixtures/good/${name}`)));
  expect(validate.errors).toBeNull();
  expect(valid).toBe(true);
});

test.each([
  "key-unknown.yaml",
  "key-missing.yaml",
  "word-unknown.yaml",
  "type-map-for-list.yaml",
  "count.yaml",
  "colour-lab.yaml",
])("the JSON Schema refuses %s", (name) => {
  expect(validate(parse(readFile(`fixtures/bad/${name}`)))).toBe(false);
});

test("every key of the JSON Schema says what it means", () => {
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
  expect(keyTableMarkdown().split("\n")[2]).toBe(
    "| `batch` | name of the batch | required | `spring-restock` |",
  );
});
