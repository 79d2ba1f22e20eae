import { escapeMarkup } from "../plot/markup.js";
import type { Plot } from "../plot/plot.js";
import { svgPlot } from "../plot/svg-plot.js";
import type { Block } from "../report.js";
import { heading, shown, type Table } from "../table.js";

const style = `:root{color-scheme:light dark}
body{font:16px/1.5 system-ui,sans-serif;max-width:46rem;margin:2rem auto;padding:0 1rem}
table{border-collapse:collapse;margin:1rem 0;display:block;overflow-x:auto}
th,td{padding:.2rem .8rem .2rem 0;text-align:left;vertical-align:top;border-bottom:1px solid #8886}
.number{text-align:right;font-variant-numeric:tabular-nums}
svg{max-width:100%;height:auto}
@media print{body{margin:0;max-width:none}}`;

const tag = (name: string, text: string): string => `<${name}>${escapeMarkup(text)}</${name}>`;

function table({ columns, rows, notes = [] }: Table): string {
  const kinds = columns.map(({ align }, i) =>
    (align === undefined ? rows.some((row) => typeof row[i] === "number") : align === "right")
      ? ' class="number"'
      : "",
  );
  const row = (cell: "th" | "td", texts: readonly string[]): string =>
    `<tr>${texts.map((text, i) => `<${cell}${kinds[i]}>${escapeMarkup(text)}</${cell}>`).join("")}</tr>`;
  return [
    "<table>",
    `<thead>${row("th", columns.map(heading))}</thead>`,
    "<tbody>",
    ...rows.flatMap((cells, r) => {
      const note = notes[r] ?? null;
      return [
        row(
          "td",
          columns.map((column, i) => shown(column, cells[i])),
        ),
        ...(note === null ? [] : [`<tr><td colspan="${columns.length}">${escapeMarkup(note)}</td></tr>`]),
      ];
    }),
    "</tbody>",
    "</table>",
  ].join("\n");
}

function block(part: Block, plots: readonly Plot[]): string {
  switch (part.kind) {
    case "heading":
      return tag(`h${part.level}`, part.text);
    case "paragraph":
      return tag("p", part.text);
    case "list": {
      const list = part.ordered === true ? "ol" : "ul";
      return `<${list}>\n${part.items.map((item) => tag("li", item)).join("\n")}\n</${list}>`;
    }
    case "table":
      return table(part.table);
    case "code":
      return tag("pre", part.lines.join("\n"));
    case "plot":
      return svgPlot(part.plot, { number: plots.indexOf(part.plot) + 1 }).trimEnd();
  }
}

/** Reports begin with a heading. */
const titleOf = (blocks: readonly Block[]): string =>
  blocks.flatMap((part) => (part.kind === "heading" ? [part.text] : []))[0] ?? "";

/** A report as a page of its own, readable in light and dark; plots without a block are at the end. */
export function html(blocks: readonly Block[], picture: readonly Plot[]): string {
  const placed = new Set(blocks.flatMap((part) => (part.kind === "plot" ? [part.plot] : [])));
  const rest = picture.filter((plot) => !placed.has(plot)).map((plot) => ({ kind: "plot", plot }) as const);
  const plots = [...placed, ...rest.map(({ plot }) => plot)];
  const body = [...blocks, ...rest].map((part) => block(part, plots));
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeMarkup(titleOf(blocks))}</title>
<style>
${style}
</style>
</head>
<body>
${body.join("\n")}
</body>
</html>
`;
}
