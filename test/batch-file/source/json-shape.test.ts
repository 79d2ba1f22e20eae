import { expect, test } from "vitest";
import { jsonShape } from "../../../src/batch-file/source/json-shape.js";

test.each([
  ['{"a": {"b": [1, {"c": 2}]}}', 4, true],
  ['{"a": 1, "a": 2}', 1, false],
  ['{"a": {"b": 1, "b": 1}, "c": {"b": 1}}', 2, false],
  ['{"a": "x: {[\\" :", "b:": "\\\\"}', 1, true],
  ['{"__proto__": 1}', 1, false],
  ["{}", 1, true],
])("jsonShape of %s finds a depth of %d and says whether keys are unique", (text, depth, unique) => {
  expect(jsonShape(text)).toMatchObject({ depth, unique });
});

test("jsonShape of a text that is not JSON is undefined", () => {
  expect(jsonShape('{"a": 1,}')).toBeUndefined();
  expect(jsonShape("{a: 1}")).toBeUndefined();
});

test("jsonShape does not parse what nests too deep", () => {
  expect(jsonShape("[".repeat(100_000))).toMatchObject({ depth: 100_000, plain: undefined });
});
