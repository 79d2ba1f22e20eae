import { append } from "../../core/append.js";
import { largest } from "../../core/maths/extent.js";
import { type DrawPlot, undrawn } from "../plot/draw-plot.js";
import type { Block } from "../report.js";
import type { Paint } from "./paint.js";
import { textTable } from "./text-table.js";
import { widthOf, wrap } from "./wrap.js";

/** Prose wider than this is hard to read. */
const prose = 100;

function item(text: string, mark: string, width: number): string[] {
  const lead = `${mark} `;
  return wrap(text, width - widthOf(lead)).map(
    (line, i) => `${i === 0 ? lead : " ".repeat(lead.length)}${line}`,
  );
}

function lines(part: Block, width: number, paint: Paint, draw: DrawPlot): string[] {
  const narrow = Math.min(width, prose);
  switch (part.kind) {
    case "heading": {
      const said = wrap(part.text, narrow);
      const rule = "=".repeat(largest(said.map(widthOf)));
      return [...said.map((line) => paint("strong", line)), ...(part.level === 1 ? [rule] : [])];
    }
    case "paragraph":
      return wrap(part.text, narrow);
    case "list":
      return part.items.flatMap((text, i) => item(text, part.ordered === true ? `${i + 1}.` : "-", narrow));
    case "table":
      return textTable(part.table, width, paint);
    case "code":
      return [...part.lines];
    case "plot":
      return draw(part.plot, narrow, paint);
  }
}

/**
 * A report for people as plain text of at most `width` columns. No blank line follows a minor heading.
 * `draw` is needed for blocks with a plot only.
 */
export function text(
  blocks: readonly Block[],
  width: number,
  paint: Paint,
  draw: DrawPlot = undrawn,
): string {
  const out: string[] = [];
  blocks.forEach((part, i) => {
    const before = blocks[i - 1];
    if (before !== undefined && !(before.kind === "heading" && before.level === 2)) out.push("");
    append(out, lines(part, width, paint, draw));
  });
  return `${out.join("\n")}\n`;
}
