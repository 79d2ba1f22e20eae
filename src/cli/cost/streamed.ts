import { done, type Outcome } from "../../core/fault.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { type CostWriter, csvCosts, jsonCosts, ndjsonCosts } from "../../report/cost/cost-writers.js";
import type { CostEntry } from "../../report/cost/entry.js";
import { type Stream, unplaced } from "../command.js";
import type { OutputOptions } from "../output/output-options.js";
import type { Costed } from "./costed.js";
import { type Counts, countsSaid, isMissed } from "./counts.js";
import type { CostTask } from "./task.js";

/** Text that is written at once, and how long less may wait for more [ms]. */
const mostWaiting = 1 << 15;
const longestWait = 200;

/** The writer of a format that rows stream out in. */
function writerOf(
  { format, csv }: OutputOptions,
  { spread, columns }: CostTask,
  currency: string | null,
): Outcome<CostWriter> {
  if (format === "ndjson") return done(ndjsonCosts());
  if (format === "json") return done(jsonCosts(currency));
  return csvCosts(csv, currency, spread !== undefined, columns);
}

/**
 * Costs as they are worked, written batch by batch. The head names the currency, so batches that have none wait
 * for one that has.
 */
export async function* streamed(
  files: AsyncIterable<Costed>,
  task: CostTask,
  output: OutputOptions,
  counts: Counts,
  early: readonly Diagnostic[],
  now: () => Date,
): Stream {
  let writer: CostWriter | undefined;
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
    const made = writerOf(output, task, currency);
    if (!made.ok) {
      broken = made.faults.map(unplaced);
      return "";
    }
    writer = made.value;
    const text = writer.head() + held.map(writer.entry).join("");
    held = [];
    return text;
  };
  if (early.length > 0) yield early;
  let stopped = early.length > 0 && task.failFast;
  if (!stopped)
    for await (const { entry, diagnostics, bad } of files) {
      if (diagnostics.length > 0) yield diagnostics;
      if (entry !== undefined) {
        if (writer !== undefined) waiting += writer.entry(entry);
        else {
          held.push(entry);
          if (entry.currency !== null || output.format === "ndjson") waiting += begin(entry.currency);
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
    for (const piece of writer.tail(counts.bad)) {
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
