import { withAmounts } from "../../batch-file/to-batch/amounts.js";
import type { Spec } from "../../batch-file/to-batch/complete.js";
import { modelsOf } from "../../batch-file/to-batch/models.js";
import { toBatch } from "../../batch-file/to-batch/to-batch.js";
import { uncertainInputs } from "../../batch-file/to-batch/uncertain-inputs.js";
import { type Spread, spread } from "../../core/cost/spread/spread.js";
import { planBatch } from "../../core/plan/plan.js";
import { type PlanFigure, spreadOutputs } from "../../core/plan/results/spread-outputs.js";
import type { SharedWork } from "../../core/plan/run/shared-work.js";
import type { SpreadTask } from "./spread-task.js";

/** Works a batch as often as is asked for, all that is uncertain drawn anew each time. */
export function spreadOf(spec: Spec, task: SpreadTask, shared: SharedWork): Spread<PlanFigure> {
  const inputs = uncertainInputs(spec);
  const like = { spec, models: modelsOf(spec) };
  const figures = (values: readonly number[]) => {
    const drawn = withAmounts(
      spec,
      inputs.map(({ path }, i) => ({ path, value: values[i]! })),
    );
    const plan = planBatch(toBatch(drawn, modelsOf(drawn, like)), shared);
    return plan.ok ? spreadOutputs(plan.value) : undefined;
  };
  return spread(inputs, figures, task);
}
