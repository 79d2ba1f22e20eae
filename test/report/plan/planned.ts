import { planBatch } from "../../../src/core/plan/plan.js";
import type { Plan, PlanBath, PlanLoad } from "../../../src/core/plan/plan-model.js";
import { plain } from "../../../src/report/format/paint.js";
import { text } from "../../../src/report/format/text.js";
import type { Block } from "../../../src/report/report.js";
import { batch } from "../../core/plan/sample.js";

/** The plan of the sample batch. */
export function planned(): Plan {
  const plan = planBatch(batch);
  if (!plan.ok) throw new Error(plan.faults.map(({ message }) => message).join("; "));
  return plan.value;
}

/** The same with other figures in its bath, and in the loads of that. */
export function withBath(plan: Plan, bath: Partial<PlanBath>, load: Partial<PlanLoad> = {}): Plan {
  const [own] = plan.baths;
  const loads = own!.loads.map((one) => ({ ...one, ...load }));
  return { ...plan, baths: [{ ...own!, loads, ...bath }] };
}

/** As it is printed, in one line. */
export const printed = (blocks: readonly Block[]): string => text(blocks, 1000, plain).replace(/\s+/g, " ");
