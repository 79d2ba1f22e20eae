import { costSource } from "../../core/batch/cost-source.js";
import { costBatch } from "../../core/cost/snapshot.js";
import { error, type Fault } from "../../core/fault.js";
import { planMemory } from "../../core/uptake/dye-memory.js";
import { type Diagnostic, hasErrors } from "../../diagnostics/diagnostic.js";
import { toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import type { CostEntry } from "../../report/cost/entry.js";
import { includeMemory } from "../../spec/include.js";
import { readBatchFile } from "../batch/read.js";
import { spreadOf } from "../batch/spread-of.js";
import { type Request, unplaced } from "../command.js";
import type { Io } from "../io.js";
import { type BatchFile, holdsBatch } from "./batch-files.js";
import type { Counts } from "./counts.js";
import type { CostTask } from "./task.js";

/** What came of one file: its costs or why there are none, and limits of its that are exceeded. */
export interface Costed {
  readonly entry?: CostEntry;
  /** To be shown: errors, and warnings where the file is the only one. */
  readonly diagnostics: readonly Diagnostic[];
  readonly bad: boolean;
  /** A line each. */
  readonly exceeded: readonly string[];
}

/** A report of ours among the batch files. */
const isReport = (text: string): boolean => /^\s*\{\s*"schema":\s*"dipwright\//.test(text.slice(0, 200));

type Left = "passedOver" | "undated" | "outside";

/** Costs of every file in order, one at a time; what is left out is counted. */
export async function* costed(
  files: readonly BatchFile[],
  { since, until, spread }: CostTask,
  request: Request,
  io: Io,
  counts: Counts,
): AsyncGenerator<Costed> {
  const memory = includeMemory();
  const planned = planMemory();
  const alone = files.length === 1;
  const saidBefore = new Set<string>();
  let money: { readonly currency: string; readonly file: string } | undefined;

  const leftOut = (named: boolean, data: Readonly<Record<string, unknown>>): Left | undefined => {
    if (!named && !holdsBatch(data)) return "passedOver";
    if (since === undefined && until === undefined) return undefined;
    const { date } = data;
    if (date === undefined || date === null) return "undated";
    // A date of another form is told as a fault.
    if (typeof date !== "string" || !/^\d{4}-\d\d-\d\d$/.test(date)) return undefined;
    return (since !== undefined && date < since) || (until !== undefined && date > until)
      ? "outside"
      : undefined;
  };
  /** A fault of an included file is told once, not again for every batch. */
  const fresh = (name: string, diagnostics: readonly Diagnostic[]): Diagnostic[] =>
    diagnostics.filter(({ code, message, spans: [span] }) => {
      if (alone || span === undefined || span.file === name) return true;
      const key = JSON.stringify([code, message, span.file, span.line, span.column]);
      return !saidBefore.has(key) && saidBefore.add(key) !== undefined;
    });

  for (const { name, named } of files) {
    let left: Left | undefined;
    const read = await readBatchFile(name, request, io, ["baths", "orders"], {
      memory,
      wanted: (data) => {
        left = leftOut(named, data);
        return left === undefined;
      },
      ...(named ? {} : { passOver: isReport }),
    });
    const noBatch = !named && read.diagnostics.some(({ code }) => code === "not-a-batch");
    if (read.unwanted === true || noBatch) {
      counts[left ?? "passedOver"]++;
      continue;
    }
    const found: Diagnostic[] = [];
    const count = (code: string): void =>
      void counts.warnings.set(code, (counts.warnings.get(code) ?? 0) + 1);
    // Warnings of one among many are counted only, and then need no place in the text.
    const add = (faults: readonly Fault[]): void => {
      for (const fault of faults)
        if (alone || fault.severity === "error") found.push(toDiagnostic(fault, read.locate));
        else count(fault.code);
    };
    for (const diagnostic of read.diagnostics)
      if (alone || diagnostic.severity === "error") found.push(diagnostic);
      else count(diagnostic.code);
    let entry: CostEntry | undefined;
    let exceeded: readonly Fault[] = [];
    const { batch, spec } = read;
    if (batch !== undefined && spec !== undefined) {
      const { currency } = batch;
      if (currency !== undefined && money !== undefined && currency !== money.currency)
        found.push(
          unplaced(
            error(
              "mixed-currencies",
              [],
              `${name} is in ${currency}, and ${money.file} is in ${money.currency}: amounts of unlike currencies do not go into one table`,
              "run cost once for each currency",
            ),
          ),
        );
      else {
        const plan = costSource(batch, planned);
        add(plan.faults);
        if (plan.ok) {
          if (currency !== undefined) money ??= { currency, file: name };
          exceeded = plan.value.exceeded;
          if (alone) add(exceeded);
          entry = {
            ...costBatch(plan.value),
            ...(spread === undefined ? {} : { spread: spreadOf(spec, spread, planned) }),
          };
        }
      }
    }
    const bad = hasErrors(found) || entry === undefined;
    counts.missed += exceeded.length;
    counts.shown += found.filter(({ severity }) => severity !== "error").length;
    counts[bad ? "bad" : "costed"]++;
    yield {
      ...(bad || entry === undefined ? {} : { entry }),
      diagnostics: fresh(name, found),
      bad,
      exceeded: alone ? [] : exceeded.map(({ message, code }) => `${name}: ${message} (${code})`),
    };
  }
}
