import { expect, test } from "vitest";
import { listed, nearest } from "../../../src/batch-file/issues/nearest.js";

test.each([
  ["yeild", "yield"],
  ["strenght", "strength"],
  ["wall_area", "wallArea"],
  ["Volume", "volume"],
  ["wages", undefined],
  ["yiedl", "yield"],
  ["sternghth", "strength"],
  ["heatre", "heater"],
  ["frothing", undefined],
  ["", undefined],
])("nearest to %j is %j", (written, expected) => {
  expect(nearest(written, ["volume", "yield", "strength", "wallArea", "water", "heater"])).toBe(expected);
});

test("nearest to anything among nothing is nothing", () => {
  expect(nearest("volume", [])).toBeUndefined();
});

test("listed joins words as a sentence does", () => {
  expect(listed([])).toBe("");
  expect(listed(["a"])).toBe("a");
  expect(listed(["a", "b", "c"], "and")).toBe("a, b and c");
});
