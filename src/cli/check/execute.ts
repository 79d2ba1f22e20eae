import { error, type Fault } from "../../core/fault.js";
import type { Batch } from "../../core/model/batch.js";
import { planBatch } from "../../core/plan/plan.js";
import type { SharedWork } from "../../core/plan/run/shared-work.js";
import { hasErrors } from "../../diagnostics/diagnostic.js";
import { checkReport } from "../../report/check/report.js";
import { placed } from "../batch/on-batch.js";
import { readBatchFile, workshopOf } from "../batch/read.js";
import { type Execute, refused } from "../command.js";

/** What working a batch would say of it: a plan where there is one to make, and every dye's swatches. */
function trial(batch: Batch, shared: SharedWork): readonly Fault[] {
  const plan = batch.baths.length > 0 && batch.orders.length > 0 ? planBatch(batch, shared) : undefined;
  const planned = [...(plan?.faults ?? []), ...(plan?.ok ? plan.value.exceeded : [])];
  const used = new Set(batch.orders.map((order) => order.shade?.dye));
  const unused = batch.dyes.filter((dye) => !used.has(dye) && dye.swatches.length > 0);
  return [...planned, ...unused.flatMap((dye) => shared.dyes.fit(dye, batch.handling).faults)];
}

/** All faults of all files named: on stderr with text, in the report itself with any other format. */
export const execute: Execute = async (request, io) => {
  const names = request.args;
  if (names.filter((name) => name === "-").length > 1)
    return refused(error("usage", [], "stdin can be read once only", "write - once"));
  const workshop = workshopOf(io);
  const files = [];
  for (const name of names) {
    const read = await readBatchFile(name, request, io, { workshop });
    const { batch } = read;
    const diagnostics = [
      ...read.diagnostics,
      ...(batch ? trial(batch, workshop.work) : []).map((fault) => placed(fault, read)),
    ];
    files.push({ name, diagnostics, ...(batch === undefined ? {} : { batch }) });
  }
  const diagnostics = files.flatMap((file) => file.diagnostics);
  const asText = request.output.format === "text";
  const report = checkReport(files, asText);
  if (asText) return { diagnostics, report };
  const bad = hasErrors(diagnostics);
  return {
    diagnostics: [],
    report,
    ...(bad ? { status: 2 } : {}),
    missed: !bad && request.output.strict && diagnostics.length > 0,
  };
};
