import { type DrawPlot, undrawn } from "../plot/draw-plot.js";
import type { Block } from "../report.js";
import { type Cell, type Column, heading, shown, type Table } from "../table.js";
import { plain } from "./paint.js";

/** Text that markdown shows unchanged, on one line. */
export const escapeMarkdown = (text: string): string =>
  text
    .replace(/[\\`*_[\]<>|~]/g, "\\$&")
    .replace(/&(?=#?\w+;)/g, "\\&")
    .replace(/^(\s*)([-+#](?=\s)|\d+(?=[.)]\s))/, (_all, space: string, mark: string) =>
      /\d/.test(mark) ? `${space}${mark}\\` : `${space}\\${mark}`,
    )
    .replace(/\s*\r?\n\s*/g, " ");

const isNumeric = ({ rows }: Table, index: number, { align }: Column): boolean =>
  align === undefined ? rows.some((row) => typeof row[index] === "number") : align === "right";

function table(model: Table): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  // A note goes where text is longest.
  const at = Math.max(
    0,
    model.columns.findIndex((column, i) => !isNumeric(model, i, column) && column.tone === undefined),
  );
  const cell = (column: Column, value: Cell | undefined): string => escapeMarkdown(shown(column, value));
  return [
    line(model.columns.map((column) => escapeMarkdown(heading(column)))),
    line(model.columns.map((column, i) => (isNumeric(model, i, column) ? "---:" : "---"))),
    ...model.rows.flatMap((row, r) => {
      const note = model.notes?.[r] ?? null;
      return [
        line(model.columns.map((column, i) => cell(column, row[i]))),
        ...(note === null
          ? []
          : [line(model.columns.map((_column, i) => (i === at ? escapeMarkdown(note) : "")))]),
      ];
    }),
  ].join("\n");
}

/** Columns that a block of code can have on most pages. */
const plotColumns = 76;

function block(part: Block, draw: DrawPlot): string {
  switch (part.kind) {
    case "heading":
      return `${"#".repeat(part.level)} ${escapeMarkdown(part.text)}`;
    case "paragraph":
      return escapeMarkdown(part.text);
    case "list":
      return part.items
        .map((item, i) => `${part.ordered === true ? `${i + 1}.` : "-"} ${escapeMarkdown(item)}`)
        .join("\n");
    case "table":
      return table(part.table);
    case "code":
      return [`\`\`\`${part.language ?? "yaml"}`, ...part.lines, "```"].join("\n");
    case "plot":
      return ["```text", ...draw(part.plot, plotColumns, plain), "```"].join("\n");
  }
}

/** A report for people as markdown, tables with bars, plots as text. `draw` is needed for these only. */
export const markdown = (blocks: readonly Block[], draw: DrawPlot = undrawn): string =>
  `${blocks.map((part) => block(part, draw)).join("\n\n")}\n`;
