import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import { formatOf } from "../../report/format/formats.js";
import { type SpreadTask, spreadTask } from "../batch/spread-task.js";
import type { Request } from "../command.js";
import { isDay } from "../is-day.js";
import { usage } from "../usage.js";

/** What is asked of `cost`. */
export interface CostTask {
  readonly names: readonly string[];
  readonly spread?: SpreadTask;
  /** File of an earlier report. */
  readonly against?: string;
  /** ISO 8601, both days included. */
  readonly since?: string;
  readonly until?: string;
  readonly columns?: readonly string[];
  readonly failFast: boolean;
}

/** Whether a day (ISO 8601) is asked for; all are where neither --since nor --until is given. */
export const isAsked = ({ since, until }: Pick<CostTask, "since" | "until">, day: string): boolean =>
  !((since !== undefined && day < since) || (until !== undefined && day > until));

/** Whether some days are not asked for. */
export const hasDays = ({ since, until }: Pick<CostTask, "since" | "until">): boolean =>
  since !== undefined || until !== undefined;

/** Reads arguments and options of `cost`; every fault of them at once. */
export function readTask({ args, options, output }: Request): Outcome<CostTask> {
  const text = (name: string): string | undefined => options[name] as string | undefined;
  const spread = spreadTask({ options });
  const faults: Fault[] = [...spread.faults];
  if (args.filter((name) => name === "-").length > 1)
    faults.push(error("usage", [], "stdin can be read once only", "write - once"));
  const [since, until, against] = ["since", "until", "against"].map(text);
  for (const [name, day] of Object.entries({ since, until }))
    if (day !== undefined && !isDay(day))
      faults.push(
        usage(`--${name}`, `"${day}" is not a day`, "write year, month and day, such as 2027-04-16"),
      );
  if (since !== undefined && until !== undefined && isDay(since) && isDay(until) && since > until)
    faults.push(usage("--until", `${until} lies before ${since}`, "write the earlier day after --since"));
  if (against !== undefined && options.spread === true)
    faults.push(usage("--spread", "a comparison draws nothing", "leave out --spread or --against"));
  const columns = text("columns")
    ?.split(",")
    .map((name) => name.trim());
  if (columns !== undefined && !formatOf(output.format).hasColumns)
    faults.push(usage("--columns", `${output.format} has no columns to choose`, "add --format csv"));
  if (columns?.some((name) => name === ""))
    faults.push(usage("--columns", "a name is empty", "write names with a comma between them: batch,order"));
  if (faults.length > 0 || !spread.ok) return failed(...faults);
  return done({
    names: args,
    ...(spread.value === undefined ? {} : { spread: spread.value }),
    ...(against === undefined ? {} : { against }),
    ...(since === undefined ? {} : { since }),
    ...(until === undefined ? {} : { until }),
    ...(columns === undefined ? {} : { columns }),
    failFast: options.failFast === true,
  });
}
