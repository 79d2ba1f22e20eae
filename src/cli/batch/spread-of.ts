import { planBatch } from "../../core/batch/plan.js";
import { planMemory } from "../../core/batch/plan-memory.js";
import { type Spread, spread } from "../../core/cost/spread.js";
import { type PlanFigure, spreadOutputs } from "../../core/cost/spread-outputs.js";
import { withAmounts } from "../../spec/amounts.js";
import type { Spec } from "../../spec/complete.js";
import { toBatch } from "../../spec/to-batch.js";
import { uncertainInputs } from "../../spec/uncertain-inputs.js";
import type { SpreadTask } from "./spread-task.js";

/** Works a batch as often as is asked for, all that is uncertain drawn anew each time. */
export function spreadOf(spec: Spec, task: SpreadTask, memory = planMemory()): Spread<PlanFigure> {
  const inputs = uncertainInputs(spec);
  const figures = (values: readonly number[]) => {
    const drawn = withAmounts(
      spec,
      inputs.map(({ path }, i) => ({ path, value: values[i]! })),
    );
    const plan = planBatch(toBatch(drawn), { ...memory, lives: "own" });
    return plan.ok ? spreadOutputs(plan.value) : undefined;
  };
  return spread(inputs, figures, task);
}
