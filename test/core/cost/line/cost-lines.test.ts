import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { costLines, lineRecords } from "../../../../src/core/cost/line/cost-lines.js";
import type { CauseWords } from "../../../../src/core/cost/line/line-record.js";

const titles = costLines.map((line) => lineRecords[line].title);

test("cost lines have different titles, and no title is that of another column of the cost table", () => {
  const others = ["batch", "date", "order", "part", "shade", "base", "quantity", "started", "total", "price"];
  expect(new Set([...titles, ...others]).size).toBe(titles.length + others.length);
});

test("a cause that moves several lines is called the same on each", () => {
  const words = new Map<string, CauseWords>();
  for (const line of costLines)
    for (const [code, named] of Object.entries(lineRecords[line].words)) {
      expect(words.get(code) ?? named).toEqual(named);
      words.set(code, named);
    }
  expect(words.get("yield")!.name).toBe("parts started per good one");
  const names = [...words.values()].map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
});

test("the README names every line of the cost sheet", () => {
  const readme = readFileSync(new URL("../../../../README.md", import.meta.url), "utf8").toLowerCase();
  for (const title of titles) expect(readme).toContain(title);
});
