import type { BatchRead } from "../../batch-file/batch-read.js";
import type { Need } from "../../batch-file/batch-text.js";
import type { Spec } from "../../batch-file/to-batch/complete.js";
import type { Fault, Outcome } from "../../core/fault.js";
import type { Batch } from "../../core/model/batch.js";
import type { SharedWork } from "../../core/plan/run/shared-work.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import type { Report } from "../../report/report.js";
import { type Request, type Result, unplaced } from "../command.js";
import type { Io } from "../io.js";
import { readBatchFile, workshopOf } from "./read.js";

/** What a command made of a batch. `missed`: a limit or tolerance of the user's is not met. */
export interface Worked {
  readonly report: Report;
  readonly missed?: boolean;
  /** For people, the report itself says what is wrong. */
  readonly holdsFaults?: true;
}

/** A fault of the work, at its place in the file; one whose path begins with an option belongs to the command line. */
export const placed = (fault: Fault, { locate }: Pick<BatchRead, "locate">): Diagnostic =>
  String(fault.path[0]).startsWith("--") ? unplaced(fault) : toDiagnostic(fault, locate);

/** Reads the batch of a command's first argument and works on it; faults of the work are placed in the file. */
export async function onBatch(
  request: Request,
  io: Io,
  needs: readonly Need[],
  work: (batch: Batch, spec: Spec, shared: SharedWork) => Outcome<Worked> | Promise<Outcome<Worked>>,
): Promise<Result> {
  const workshop = workshopOf(io);
  const log = request.options.log as string | undefined;
  const asked = { needs, workshop, ...(log === undefined ? {} : { log }) };
  const read = await readBatchFile(request.args[0] ?? "-", request, io, asked);
  if (read.batch === undefined || read.spec === undefined) return { diagnostics: read.diagnostics };
  const worked = await work(read.batch, read.spec, workshop.work);
  const held = worked.ok && worked.value.holdsFaults === true ? ({ inReport: true } as const) : {};
  const found = worked.faults.map((fault) => ({ ...placed(fault, read), ...held }));
  const diagnostics = [...read.diagnostics, ...found];
  if (!worked.ok) return { diagnostics };
  const { report, missed = false } = worked.value;
  return { report, missed, diagnostics };
}
