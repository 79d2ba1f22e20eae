import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { costRows } from "../../report/cost/cost-rows.js";
import type { CostEntry } from "../../report/cost/entry.js";
import type { RowFormat, RowWriter } from "../../report/format/row-format.js";
import { type Stream, unplaced } from "../command.js";
import type { OutputOptions } from "../output/output-options.js";
import type { Costed } from "./costed.js";
import { type Counts, countsSaid, isMissed } from "./counts.js";
import type { CostTask } from "./task.js";

/** Text that is written at once, and how long less may wait for more [ms]. */
const mostWaiting = 1 << 15;
const longestWait = 200;

/**
 * Costs as they are worked, written batch by batch. Where the head names the currency, batches that have none wait
 * for one that has.
 */
export async function* streamed(
  files: AsyncIterable<Costed>,
  format: RowFormat,
  task: CostTask,
  output: OutputOptions,
  counts: Counts,
  early: readonly Diagnostic[],
  now: () => Date,
): Stream {
  let writer: RowWriter<CostEntry> | undefined;
  let waiting = "";
  let flushed = now().getTime();
  /** Whether what waits is worth a write, or has waited long enough. */
  const due = (): boolean =>
    waiting.length >= mostWaiting || (waiting !== "" && now().getTime() - flushed >= longestWait);
  const flush = (): string => {
    const text = waiting;
    waiting = "";
    flushed = now().getTime();
    return text;
  };
  let held: CostEntry[] = [];
  let broken: readonly Diagnostic[] = [];
  const begin = (currency: string | null): string => {
    const made = costRows(currency, task.spread !== undefined, task.columns);
    if (!made.ok) {
      broken = made.faults.map(unplaced);
      return "";
    }
    writer = format.open(made.value, output.csv);
    const text = writer.head() + held.map(writer.rows).join("");
    held = [];
    return text;
  };
  if (early.length > 0) yield early;
  let stopped = early.length > 0 && task.failFast;
  if (!stopped)
    for await (const { entry, diagnostics, bad } of files) {
      if (diagnostics.length > 0) yield diagnostics;
      if (entry !== undefined) {
        if (writer !== undefined) waiting += writer.rows(entry);
        else {
          held.push(entry);
          if (entry.currency !== null || !format.headed) waiting += begin(entry.currency);
        }
        if (due()) yield flush();
      }
      stopped = bad && task.failFast;
      if (stopped || broken.length > 0) break;
    }
  const nothing = counts.costed === 0 && (counts.bad > 0 || early.length > 0);
  if (broken.length === 0 && writer === undefined && !nothing)
    waiting += begin(held.length === 0 ? counts.currency : null);
  const wrong = counts.bad > 0 || early.length > 0;
  if (writer !== undefined) {
    for (const piece of writer.tail({ filesNotCosted: counts.bad })) {
      waiting += piece;
      if (waiting.length >= mostWaiting) yield flush();
    }
    yield flush();
  }
  const note = countsSaid(counts);
  return {
    diagnostics: broken,
    ...(wrong ? { status: 2 } : {}),
    missed: isMissed(counts, output.strict),
    spoilt: writer === undefined || stopped,
    ...(note === undefined ? {} : { note }),
  };
}
