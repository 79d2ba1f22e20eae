import { done, failed, type Outcome } from "../../core/fault.js";
import { formatOf, type Layout } from "../../report/format/formats.js";
import type { Report } from "../../report/report.js";
import { visibleReport } from "../../report/visible-report.js";
import { usage } from "../usage.js";
import type { OutputOptions } from "./output-options.js";

/** What a format needs and a report lacks, in words. */
const lacking = {
  lines: "has one line a row, and this is a report of one thing",
  picture: "is a picture, and this report has none",
} as const;

/** A report in the format asked for, or why it cannot be written so. */
export async function render(
  report: Report | string,
  { format }: Pick<OutputOptions, "format">,
  layout: Layout,
): Promise<Outcome<string>> {
  if (typeof report === "string") return done(report);
  const { needs, forPeople, whole } = formatOf(format);
  if (needs !== null && report[needs] === undefined)
    return failed(usage("--format", `${format} ${lacking[needs]}`, "write --format json"));
  return done(await whole(forPeople ? visibleReport(report) : report, layout));
}
