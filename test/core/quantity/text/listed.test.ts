import { expect, test } from "vitest";
import { listed } from "../../../../src/core/quantity/text/listed.js";

test("listed joins words as a sentence does", () => {
  expect(listed([])).toBe("");
  expect(listed(["a"])).toBe("a");
  expect(listed(["a", "b"])).toBe("a or b");
  expect(listed(["a", "b", "c"], "and")).toBe("a, b and c");
});
