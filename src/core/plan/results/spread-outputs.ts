import type { Evaluated } from "../../cost/spread/spread.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import type { Plan } from "../plan-model.js";

/** Results of a plan that a spread reports: cost per good part and dip by order, life in parts and loads by bath. */
export type PlanFigure = "costPerPart" | "dipSeconds" | "lifeParts" | "lifeLoads";

/** The figures of one drawn plan. An order's dip time is the mean over its parts. */
export function spreadOutputs(plan: Plan): Evaluated<PlanFigure> {
  const loads = plan.baths.flatMap((bath) => bath.loads);
  return {
    cost: plan.totals.cost,
    outputs: {
      costPerPart: plan.orders.map((order) => order.costPerPart),
      dipSeconds: plan.orders.map(({ order }) => {
        const own = loads.filter((load) => load.order === order);
        const parts = exactSumOf(own, (load) => load.parts);
        return parts > 0 ? exactSumOf(own, (load) => load.parts * load.dipSeconds) / parts : null;
      }),
      lifeParts: plan.baths.map(({ life }) => life.parts),
      lifeLoads: plan.baths.map(({ life }) => life.loads),
    },
  };
}
