import { expect, test } from "vitest";
import { linesOf } from "../../../src/batch-file/source/lines.js";

test("span counts lines and columns from 1, and stays on its line", () => {
  const lines = linesOf("a.yaml", "one\r\ntwo three\n\nlast");
  const at = (start: number, end: number) => {
    const { line, column, length, text } = lines.span(start, end);
    return [line, column, length, text];
  };
  expect(at(0, 3)).toEqual([1, 1, 3, "one"]);
  expect(at(9, 14)).toEqual([2, 5, 5, "two three"]);
  expect(at(9, 20)).toEqual([2, 5, 5, "two three"]);
  expect(at(15, 16)).toEqual([3, 1, 1, ""]);
  expect(at(16, 20)).toEqual([4, 1, 4, "last"]);
  expect(at(20, 21)).toEqual([4, 5, 1, "last"]);
});
