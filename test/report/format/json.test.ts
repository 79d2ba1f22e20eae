import { expect, test } from "vitest";
import { json } from "../../../src/report/format/json.js";

test("json names its schema first, keeps the order of keys and all digits of numbers", () => {
  expect(json("mix", { waterMl: 0.1 + 0.2, a: [1, null], none: undefined })).toBe(
    '{\n  "schema": "dipwright/mix@1",\n  "waterMl": 0.30000000000000004,\n  "a": [\n    1,\n    null\n  ]\n}\n',
  );
});

test("json writes a map as an object", () => {
  expect(JSON.parse(json("x", { blank: new Map([["white", 1.84]]) }))).toEqual({
    schema: "dipwright/x@1",
    blank: { white: 1.84 },
  });
});

test("json throws on a number that JSON cannot hold", () => {
  for (const bad of [Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => json("x", { deep: { bad } })).toThrow(/bad is/);
});
