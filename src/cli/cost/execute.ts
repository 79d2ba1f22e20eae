import { planBatch } from "../../core/batch/plan.js";
import type { Plan } from "../../core/batch/plan-model.js";
import { error } from "../../core/fault.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { hasErrors } from "../../diagnostics/diagnostic.js";
import { toDiagnostic } from "../../diagnostics/to-diagnostic.js";
import { costReport } from "../../report/cost/report.js";
import { readBatchFile } from "../batch/read.js";
import { type Execute, refused, unplaced } from "../command.js";

/** What each order of one or many batches costs. */
export const execute: Execute = async (request, io) => {
  const names = request.args;
  if (names.filter((name) => name === "-").length > 1)
    return refused(error("usage", [], "stdin can be read once only", "write - once"));
  const diagnostics: Diagnostic[] = [];
  const plans: Plan[] = [];
  let missed = false;
  for (const name of names) {
    const read = await readBatchFile(name, request, io, ["baths", "orders"]);
    diagnostics.push(...read.diagnostics);
    if (read.batch === undefined) continue;
    const plan = planBatch(read.batch);
    const faults = plan.ok ? [...plan.faults, ...plan.value.exceeded] : plan.faults;
    diagnostics.push(...faults.map((fault) => toDiagnostic(fault, read.locate)));
    if (!plan.ok) continue;
    plans.push(plan.value);
    missed ||= plan.value.exceeded.length > 0;
  }
  const currencies = [...new Set(plans.flatMap(({ currency }) => currency ?? []))];
  if (currencies.length > 1)
    diagnostics.push(
      unplaced(
        error(
          "mixed-currencies",
          [],
          `the batches are in ${currencies.join(", ")}: amounts of unlike currencies do not go into one table`,
          "run cost once for each currency",
        ),
      ),
    );
  const bad = hasErrors(diagnostics);
  if (plans.length === 0 || currencies.length > 1) return { diagnostics };
  return { diagnostics, report: costReport(plans), missed, ...(bad ? { status: 2 } : {}) };
};
