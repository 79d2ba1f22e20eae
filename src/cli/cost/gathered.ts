import { append } from "../../core/append.js";
import { compareCosts } from "../../core/cost/history/compare.js";
import type { CostSnapshot, OrderCost } from "../../core/cost/history/snapshot.js";
import type { Fault } from "../../core/fault.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { costChangeReport } from "../../report/cost/change-report.js";
import type { CostEntry } from "../../report/cost/entry.js";
import { costReportOf, currencyOf } from "../../report/cost/report.js";
import type { Report } from "../../report/report.js";
import { selectColumns } from "../../report/select-columns.js";
import { type Result, unplaced } from "../command.js";
import type { OutputOptions } from "../output/output-options.js";
import type { Costed } from "./costed.js";
import { type Counts, countsSaid, isMissed } from "./counts.js";
import { type CostTask, hasDays, isAsked } from "./task.js";

/** The report with the columns asked for, in its rows and in the first table that people see. */
function withColumns(report: Report, names: readonly string[] | undefined): Report | readonly Fault[] {
  if (names === undefined) return report;
  const rows = selectColumns(report.rows, names);
  if (!rows.ok) return rows.faults;
  const at = report.blocks.findIndex(({ kind }) => kind === "table");
  const blocks = report.blocks.map((block, i) =>
    i === at ? { kind: "table" as const, table: rows.value } : block,
  );
  return { ...report, rows: rows.value, blocks };
}

/** Keeps of all batches what a report for people, or a comparison with `before`, needs, and makes it. */
export async function gathered(
  files: AsyncIterable<Costed>,
  task: CostTask,
  output: OutputOptions,
  counts: Counts,
  early: readonly Diagnostic[],
  before: CostSnapshot | undefined,
): Promise<Result> {
  const entries: CostEntry[] = [];
  const orders: OrderCost[] = [];
  const diagnostics = [...early];
  let stopped = early.length > 0 && task.failFast;
  let currency: string | null = null;
  if (!stopped)
    for await (const { entry, diagnostics: found, bad } of files) {
      append(diagnostics, found);
      currency ??= entry?.currency ?? null;
      if (entry !== undefined && before !== undefined) append(orders, entry.orders);
      else if (entry !== undefined) entries.push(entry);
      stopped = bad && task.failFast;
      if (stopped) break;
    }
  const wrong = counts.bad > 0 || early.length > 0;
  const note = countsSaid(counts);
  const said = { ...(note === undefined ? {} : { note }) };
  const mixed = diagnostics.some(({ code }) => code === "mixed-currencies");
  if (stopped || (counts.costed === 0 && wrong) || (before === undefined && mixed))
    return { diagnostics, ...said };
  const result = (report: Report): Result => {
    const shown = withColumns(report, task.columns);
    if (!("blocks" in shown)) return { diagnostics: shown.map(unplaced) };
    return {
      diagnostics,
      report: shown,
      missed: isMissed(counts, output.strict),
      ...(wrong ? { status: 2 as const } : {}),
      ...said,
    };
  };
  if (before === undefined) return result(costReportOf(entries));
  const asked = before.orders.filter(({ date }) => !hasDays(task) || (date !== null && isAsked(task, date)));
  const compared = compareCosts(
    { ...before, orders: asked },
    { currency: currency ?? currencyOf(entries), orders },
  );
  if (!compared.ok) return { diagnostics: [...diagnostics, ...compared.faults.map(unplaced)] };
  return result(costChangeReport(compared.value, counts.bad, before.filesNotCosted));
}
