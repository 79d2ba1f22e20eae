import type { Paint } from "../../report/format/paint.js";
import type { Plot } from "../../report/plot/plot.js";
import type { Block, Report } from "../../report/report.js";
import type { OutputOptions } from "./output-options.js";

/** The writer of plots as text, loaded only where there is one. */
const drawer = async (blocks: readonly Block[]) =>
  blocks.some(({ kind }) => kind === "plot")
    ? (await import("../../report/plot/text-plot.js")).textPlot
    : undefined;

/** A report in the format asked for; each writer is loaded only when it is used. */
export async function render(
  report: Report | string,
  { format, csv }: OutputOptions,
  paint: Paint,
  columns: number | undefined,
): Promise<string> {
  if (typeof report === "string") return report;
  switch (format) {
    case "json":
      return (await import("../../report/format/json.js")).json(report.name, report.data);
    case "csv":
    case "tsv":
      return (await import("../../report/format/csv.js")).csv(report.rows, csv);
    case "markdown":
      return (await import("../../report/format/markdown.js")).markdown(
        report.blocks,
        await drawer(report.blocks),
      );
    case "text":
      return (await import("../../report/format/text.js")).text(
        report.blocks,
        columns ?? 80,
        paint,
        await drawer(report.blocks),
      );
    case "svg":
      return (await import("../../report/plot/svg-plot.js")).svgPlot(pictureOf(report));
    case "html":
      return (await import("../../report/format/html.js")).html(report.blocks, pictureOf(report));
    case "ndjson":
      // Commands that offer it write it themselves, row by row.
      throw new Error(`no report of ${report.name} in ndjson`);
  }
}

function pictureOf({ name, picture }: Report): Plot {
  if (picture === undefined) throw new Error(`${name} has no picture`);
  return picture;
}
