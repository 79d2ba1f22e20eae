import { costBatch } from "../../core/cost/history/snapshot.js";
import type { Fault } from "../../core/fault.js";
import { mapped } from "../../core/mapped.js";
import { costSource } from "../../core/plan/results/cost-source.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import type { CostEntry } from "../../report/cost/entry.js";
import { readBatchFile, workshopOf } from "../batch/read.js";
import { spreadOf } from "../batch/spread-of.js";
import type { Request } from "../command.js";
import type { Io } from "../io.js";
import { type BatchFile, holdsBatch } from "./batch-files.js";
import { type CostTask, hasDays, isAsked } from "./task.js";

/** Why a file has no row and is not bad either. */
export type LeftOut = "passedOver" | "undated" | "outside";

/** The result of one file: plain data, so that it can come from another thread. */
export interface FileCosts {
  readonly name: string;
  readonly leftOut?: LeftOut;
  /** Of a batch that is left out. */
  readonly currency?: string;
  /** Absent where there is an error among the diagnostics. */
  readonly entry?: CostEntry;
  /** Errors; and warnings where the file is the only one. */
  readonly diagnostics: readonly Diagnostic[];
  /** Codes of the warnings of one file among many. */
  readonly warned: readonly string[];
  /** Limits of the batch that are exceeded. */
  readonly exceeded: readonly Pick<Fault, "message" | "code">[];
}

/** What is the same for every file of a run. */
export interface CostJob {
  readonly task: Pick<CostTask, "since" | "until" | "spread">;
  readonly set: readonly string[];
  /** There is one file only: all of its warnings are shown. */
  readonly alone: boolean;
  /** Only orders and what they leave out are kept: less to pass between threads. */
  readonly ordersOnly: boolean;
}

/** A report of ours among the batch files. */
const isReport = (text: string): boolean => /^\s*\{\s*"schema":\s*"dipwright\//.test(text.slice(0, 200));

function leftOut(
  task: CostJob["task"],
  named: boolean,
  data: Readonly<Record<string, unknown>>,
): LeftOut | undefined {
  if (!named && !holdsBatch(data)) return "passedOver";
  if (!hasDays(task)) return undefined;
  const { date } = data;
  if (date === undefined || date === null) return "undated";
  // A date of another form is a fault later.
  if (typeof date !== "string" || !/^\d{4}-\d\d-\d\d$/.test(date)) return undefined;
  return isAsked(task, date) ? undefined : "outside";
}

/** Costs one file after the other; files that they include, and dyes, are read and fitted once. */
export function fileCosting(
  { task, set, alone, ordersOnly }: CostJob,
  io: Io,
): (file: BatchFile) => Promise<FileCosts> {
  const workshop = workshopOf(io);
  const shared = workshop.work;
  const request = { output: { set } } satisfies { output: Pick<Request["output"], "set"> };
  return async ({ name, named }) => {
    let left: LeftOut | undefined;
    let currency: unknown;
    const read = await readBatchFile(name, request, io, {
      needs: ["bathsIfDyed", "orders"],
      workshop,
      wanted: (data) => {
        left = leftOut(task, named, data);
        if (left === "outside" || left === "undated") currency = data.currency;
        return left === undefined;
      },
      ...(named ? {} : { passOver: isReport }),
    });
    const diagnostics: Diagnostic[] = [];
    const warned: string[] = [];
    const noBatch = !named && read.diagnostics.some(({ code }) => code === "not-a-batch");
    if (read.unwanted === true || noBatch)
      return {
        name,
        leftOut: left ?? "passedOver",
        ...(typeof currency === "string" ? { currency } : {}),
        diagnostics,
        warned,
        exceeded: [],
      };
    // Warnings of one among many are counted only, and then need no place in the text.
    const add = (faults: readonly Fault[]): void => {
      for (const fault of faults)
        if (alone || fault.severity === "error") diagnostics.push(toDiagnostic(fault, read.locate));
        else warned.push(fault.code);
    };
    for (const diagnostic of read.diagnostics)
      if (alone || diagnostic.severity === "error") diagnostics.push(diagnostic);
      else warned.push(diagnostic.code);
    const { batch, spec } = read;
    if (batch === undefined || spec === undefined) return { name, diagnostics, warned, exceeded: [] };
    const source = costSource(batch, shared);
    add(source.faults);
    if (!source.ok) return { name, diagnostics, warned, exceeded: [] };
    const { exceeded } = source.value;
    if (alone) add(exceeded);
    return {
      name,
      entry: {
        ...costBatch(source.value),
        ...(ordersOnly ? { baths: [], colours: [], assumptions: [], warnings: [], exceeded: [] } : {}),
        ...(task.spread === undefined ? {} : { spread: spreadOf(spec, task.spread, shared) }),
      },
      diagnostics,
      warned,
      exceeded: mapped(exceeded, ({ message, code }) => ({ message, code })),
    };
  };
}
