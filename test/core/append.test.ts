import { expect, test } from "vitest";
import { append } from "../../src/core/append.js";
import { largest, smallest } from "../../src/core/maths/extent.js";
import { textTable } from "../../src/report/format/text-table.js";

const many = Array.from({ length: 300_000 }, (_, i) => i);

test("append, smallest and largest take lists that are too long to be arguments", () => {
  expect(() => Math.max(...many)).toThrow(RangeError);
  const list = [-1];
  append(list, many);
  expect([list.length, list.at(-1)]).toEqual([300_001, 299_999]);
  expect([smallest(many), largest(many)]).toEqual([0, 299_999]);
});

test("smallest and largest of nothing are the bound given", () => {
  expect([smallest([], 2), largest([], 2), smallest([])]).toEqual([2, 2, Number.POSITIVE_INFINITY]);
});

test("textTable lays out as many rows as there are", () => {
  const rows = many.slice(0, 150_000).map((row) => [row]);
  const lines = textTable({ columns: [{ key: "row", title: "row" }], rows }, 80, (_tone, text) => text);
  expect([lines.length, lines.at(-1)]).toEqual([150_001, "149999"]);
});
