import { done, error, type Fault, failed, isError, type Outcome, warning } from "../../core/fault.js";
import { planBatch } from "../../core/plan/plan.js";
import { type Diagnostic, hasErrors } from "../../diagnostics/diagnostic.js";
import { type PlannedRow, plannedRows } from "../../log/append/planned-rows.js";
import { placed } from "../batch/on-batch.js";
import { readBatchFile, workshopOf } from "../batch/read.js";
import type { Request } from "../command.js";
import type { Io } from "../io.js";

/** The rows of a planned day, or why there is none. */
export interface PlannedDay {
  readonly rows?: readonly PlannedRow[];
  /** The mix in each tank whose bath is one. */
  readonly mixes?: ReadonlyMap<string, string>;
  readonly diagnostics: readonly Diagnostic[];
}

/** Plans a batch file for its rows, its baths as that log leaves them where they start from it; warnings of the plan are for `plan` to say. */
export async function plannedDay(spec: string, log: string, request: Request, io: Io): Promise<PlannedDay> {
  const workshop = workshopOf(io);
  const read = await readBatchFile(spec, request, io, {
    needs: ["baths", "orders"],
    log,
    // The sheet that the day goes by was printed before its first row.
    asDayBegan: true,
    workshop,
  });
  if (read.batch === undefined) return { diagnostics: read.diagnostics.filter(isError) };
  const plan = planBatch(read.batch, workshop.work);
  const diagnostics = [...read.diagnostics, ...plan.faults.map((fault) => placed(fault, read))].filter(
    isError,
  );
  return plan.ok && !hasErrors(diagnostics)
    ? {
        rows: plannedRows(plan.value),
        mixes: new Map(
          read.batch.baths.flatMap(({ tank, dye }) => (dye.mix === undefined ? [] : [[tank.name, dye.name]])),
        ),
        diagnostics,
      }
    : { diagnostics };
}

/** Which row of a planned day is done. */
export interface WhichRow {
  readonly event: string;
  readonly bath: string | undefined;
  readonly load: number | undefined;
}

/** The one planned row that is meant. */
export function pickRow(rows: readonly PlannedRow[], { event, bath, load }: WhichRow): Outcome<PlannedRow> {
  const alike = rows.filter((row) => row.event === event);
  const found = alike.filter(
    (row) => (bath === undefined || row.bath === bath) && (load === undefined || row.load === load),
  );
  const [only, ...others] = found;
  if (only !== undefined && others.length === 0) return done(only);
  const said = (row: PlannedRow): string =>
    `--bath ${row.bath}${row.load === undefined ? "" : ` --load ${row.load}`}`;
  const some = (found.length > 0 ? found : alike).slice(0, 5).map(said);
  return failed(
    error(
      "log-planned",
      [],
      found.length > 0
        ? `the plan has ${found.length} ${event} rows that this can mean`
        : `the plan has no ${event} row of that bath and load`,
      some.length > 0 ? `write for example ${some.join(", or ")}` : "record it without --from",
    ),
  );
}

/** What a filling that is made up with a mix cannot be logged for; said where its first row is recorded. */
export const mixNotFollowed = (
  rows: readonly PlannedRow[],
  mixes: ReadonlyMap<string, string> = new Map(),
): Fault[] =>
  rows
    .filter(({ event, bath }) => event === "made-up" && mixes.has(bath))
    .map(({ bath }) =>
      warning(
        "log-mix",
        [],
        `the log does not tell the dyes of mix "${mixes.get(bath)}" apart: its bath cannot start from it, and review learns nothing of it`,
        "keep the start: line that the run sheet prints for the next batch file",
      ),
    );
