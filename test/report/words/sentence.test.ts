import { expect, test } from "vitest";
import { sentence } from "../../../src/report/words/sentence.js";

test("a sentence begins with a capital and ends with one full stop", () => {
  expect(sentence("write rinses: 2")).toBe("Write rinses: 2.");
  expect(sentence("Weigh ten parts.")).toBe("Weigh ten parts.");
  expect(sentence("4 % of the dye is loose")).toBe("4 % of the dye is loose.");
  expect(sentence("")).toBe(".");
});
