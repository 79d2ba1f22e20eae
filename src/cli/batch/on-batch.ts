import type { Batch } from "../../core/batch/model.js";
import type { Outcome } from "../../core/fault.js";
import { toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import type { Report } from "../../report/report.js";
import type { Need } from "../../spec/read-batch.js";
import type { Request, Result } from "../command.js";
import type { Io } from "../io.js";
import { readBatchFile } from "./read.js";

/** What a command made of a batch. `missed`: a limit or tolerance of the user's is not met. */
export interface Worked {
  readonly report: Report;
  readonly missed?: boolean;
}

/** Reads the batch of a command's first argument and works on it; faults of the work are placed in the file. */
export async function onBatch(
  request: Request,
  io: Io,
  needs: readonly Need[],
  work: (batch: Batch) => Outcome<Worked> | Promise<Outcome<Worked>>,
): Promise<Result> {
  const read = await readBatchFile(request.args[0] ?? "-", request, io, needs);
  if (read.batch === undefined) return { diagnostics: read.diagnostics };
  const worked = await work(read.batch);
  const diagnostics = [
    ...read.diagnostics,
    ...worked.faults.map((fault) => toDiagnostic(fault, read.locate)),
  ];
  return worked.ok ? { ...worked.value, diagnostics } : { diagnostics };
}
