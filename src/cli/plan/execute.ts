import { planBatch } from "../../core/batch/plan.js";
import { done } from "../../core/fault.js";
import { planReport } from "../../report/plan/report.js";
import { onBatch } from "../batch/on-batch.js";
import type { Execute } from "../command.js";

/** The run sheet of one batch. A shade out of reach or a limit exceeded is said and gives status 1. */
export const execute: Execute = (request, io) =>
  onBatch(request, io, ["baths", "orders"], (batch) => {
    const plan = planBatch(batch);
    if (!plan.ok) return plan;
    const { exceeded } = plan.value;
    return done({ report: planReport(plan.value), missed: exceeded.length > 0 }, [
      ...plan.faults,
      ...exceeded,
    ]);
  });
