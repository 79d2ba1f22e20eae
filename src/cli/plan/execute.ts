import { done } from "../../core/fault.js";
import { planBatch } from "../../core/plan/plan.js";
import { planReport } from "../../report/plan/report.js";
import { onBatch } from "../batch/on-batch.js";
import { spreadTask } from "../batch/spread-task.js";
import { type Execute, refused } from "../command.js";

/** The run sheet of one batch. A shade out of reach or an exceeded limit gives status 1. */
export const execute: Execute = async (request, io) => {
  const drawn = spreadTask(request);
  if (!drawn.ok) return refused(...drawn.faults);
  const task = drawn.value;
  return onBatch(request, io, ["bathsIfDyed", "orders"], async (batch, spec, shared) => {
    const plan = planBatch(batch, shared);
    if (!plan.ok) return plan;
    const { exceeded } = plan.value;
    let report = planReport(plan.value);
    if (task !== undefined) {
      const { spreadOf } = await import("../batch/spread-of.js");
      const { withSpread } = await import("../../report/cost/with-spread.js");
      report = withSpread(report, plan.value, spreadOf(spec, task, shared));
    }
    const worked = { report, missed: exceeded.length > 0, holdsFaults: true } as const;
    return done(worked, [...plan.faults, ...exceeded]);
  });
};
