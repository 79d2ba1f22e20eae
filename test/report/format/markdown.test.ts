import { expect, test } from "vitest";
import { escapeMarkdown, markdown } from "../../../src/report/format/markdown.js";

test("escapeMarkdown keeps bars, marks and line breaks from changing the layout", () => {
  expect(escapeMarkdown("a|b *c* _d_ `e` [f] <g> \\")).toBe(
    "a\\|b \\*c\\* \\_d\\_ \\`e\\` \\[f\\] \\<g\\> \\\\",
  );
  expect(escapeMarkdown("one\n two")).toBe("one two");
  expect(escapeMarkdown("# no heading")).toBe("\\# no heading");
  expect(escapeMarkdown("- no list")).toBe("\\- no list");
  expect(escapeMarkdown("1. no list")).toBe("1\\. no list");
  expect(escapeMarkdown("&lt; and a & b")).toBe("\\&lt; and a & b");
  expect(escapeMarkdown("-5 °C, +0:15, 1.5 L")).toBe("-5 °C, +0:15, 1.5 L");
});

test("markdown gives headings, paragraphs, lists and tables with numbers to the right", () => {
  expect(
    markdown([
      { kind: "heading", level: 2, text: "Costs" },
      { kind: "paragraph", text: "Per part." },
      { kind: "list", items: ["a", "b"] },
      { kind: "list", items: ["a", "b"], ordered: true },
      {
        kind: "table",
        table: {
          columns: [
            { key: "part", title: "part" },
            { key: "cost_EUR", title: "cost", unit: "EUR", digits: (n) => n.toFixed(2) },
          ],
          rows: [
            ["a|b", 1.5],
            ["c", null],
          ],
        },
      },
    ]),
  ).toBe(
    "## Costs\n\nPer part.\n\n- a\n- b\n\n1. a\n2. b\n\n| part | cost EUR |\n| --- | ---: |\n| a\\|b | 1.50 |\n| c |  |\n",
  );
});
