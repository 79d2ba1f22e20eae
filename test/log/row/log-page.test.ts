import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { columnNames, columnOf } from "../../../src/log/row/columns.js";
import { type LogEvent, logEvents } from "../../../src/log/row/events.js";

const page = readFileSync(new URL("../../../examples/LOG.md", import.meta.url), "utf8");
/** Rows of the table under a heading. */
const lines = (heading: string): string[] =>
  page
    .split(`${heading}\n`)[1]!
    .split("\n## ")[0]!
    .split("\n")
    .filter((line) => line.startsWith("|"))
    .slice(2);

test("examples/LOG.md has every column with its meaning, in the order of a new log", () => {
  expect(lines("## Columns")).toEqual(columnNames.map((name) => `| ${name} | ${columnOf(name).meaning} |`));
});

test("examples/LOG.md has every event with what it needs and takes", () => {
  const told = (names: readonly string[]): string => names.join(", ");
  expect(lines("## Events")).toEqual(
    Object.entries(logEvents as Readonly<Record<string, LogEvent>>).map(
      ([name, { meaning, needs, takes }]) =>
        `| ${name} | ${meaning} | ${needs.map((some) => some.join(" or ")).join("; ")} | ${told(takes)} |`,
    ),
  );
});
