import type { Paint } from "../report/paint.js";
import type { Report } from "../report/report.js";
import type { OutputOptions } from "./output-options.js";

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
      return (await import("../report/json.js")).json(report.name, report.data);
    case "csv":
    case "tsv":
      return (await import("../report/csv.js")).csv(report.rows, csv);
    case "markdown":
      return (await import("../report/markdown.js")).markdown(report.blocks);
    case "text":
      return (await import("../report/text.js")).text(report.blocks, columns ?? 80, paint);
    default:
      throw new Error(`no writer for ${format}`);
  }
}
