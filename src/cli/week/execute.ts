import type { BatchRead } from "../../batch-file/batch-read.js";
import { sameInAll } from "../../batch-file/checks/same-in-all.js";
import type { Spec } from "../../batch-file/to-batch/complete.js";
import { error, type Fault } from "../../core/fault.js";
import type { Batch } from "../../core/model/batch.js";
import { planWeek } from "../../core/week/week.js";
import { type Diagnostic, hasErrors } from "../../diagnostics/diagnostic.js";
import { toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import { weekReport } from "../../report/week/report.js";
import type { WeekRows } from "../../report/week/rows.js";
import { sheetReport } from "../../report/week/sheet-report.js";
import { readBatchFile, workshopOf } from "../batch/read.js";
import { type Execute, refused, unplaced } from "../command.js";
import { batchFiles, holdsBatch } from "../cost/batch-files.js";
import { usage } from "../usage.js";
import { readWish } from "./read-wish.js";

/** A batch file that could be read. */
interface Read extends Pick<BatchRead, "locate"> {
  readonly name: string;
  readonly batch: Batch;
  readonly spec: Spec;
}

/** Puts the orders of all files onto days. */
export const execute: Execute = async (request, io) => {
  if (request.args.filter((name) => name === "-").length > 1)
    return refused(error("usage", [], "stdin can be read once only", "write - once"));
  const wish = readWish(request.options);
  if (!wish.ok) return refused(...wish.faults);
  const { files, faults } = await batchFiles(request.args, io);
  const workshop = workshopOf(io);
  const log = request.options.log as string | undefined;
  const reads: Read[] = [];
  const diagnostics: Diagnostic[] = faults.map(unplaced);
  for (const { name, named } of files) {
    const read = await readBatchFile(name, request, io, {
      needs: ["orders"],
      workshop,
      ...(log === undefined ? {} : { log }),
      wanted: (data) => named || holdsBatch(data),
    });
    if (read.unwanted === true) continue;
    diagnostics.push(...read.diagnostics);
    const { batch, spec, locate } = read;
    if (batch !== undefined && spec !== undefined) reads.push({ name, batch, spec, locate });
  }
  if (hasErrors(diagnostics)) return { diagnostics };
  const { sheet, ...asked } = wish.value;
  for (const { file, fault } of sameInAll(reads, sheet !== undefined))
    diagnostics.push(toDiagnostic(fault, reads[file]!.locate));
  const dated = reads.flatMap(({ batch }) => (batch.date === undefined ? [] : [batch.date])).sort();
  const from = asked.from ?? dated[0];
  if (from === undefined)
    diagnostics.push(
      unplaced(usage("--from", "the first day is missing: no file has a date:", "write --from 2027-04-12")),
    );
  const [first, ...others] = reads.map(({ batch }) => batch);
  if (first === undefined)
    diagnostics.push(unplaced(error("no-files", [], "no file holds a batch", "check the path")));
  if (hasErrors(diagnostics) || first === undefined || from === undefined) return { diagnostics };
  const week = planWeek([first, ...others], { ...asked, from }, workshop.work);
  for (const fault of week.faults) diagnostics.push(ofItsFile(fault, reads));
  if (!week.ok) return { diagnostics };
  const missed = week.value.orders.some(({ lateDays }) => lateDays > 0);
  const rows = (request.options.rows ?? "orders") as WeekRows;
  if (sheet === undefined) return { report: weekReport(week.value, rows), missed, diagnostics };
  const day = week.value.days.find(({ date }) => date === sheet);
  if (day !== undefined) return { report: sheetReport(day), missed, diagnostics };
  const days = week.value.days.map(({ date }) => date).join(", ");
  const nothing = usage("--sheet", `nothing is dyed on ${sheet}`, `write one of ${days}`);
  return { diagnostics: [...diagnostics, unplaced(nothing)] };
};

/** A fault of the week at its place in the file that its path begins with. */
const ofItsFile = ({ path: [file, ...path], ...fault }: Fault, reads: readonly Read[]): Diagnostic =>
  toDiagnostic({ ...fault, path }, reads[file as number]!.locate);
