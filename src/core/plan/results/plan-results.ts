import { mapped } from "../../mapped.js";
import { largest, smallest } from "../../maths/extent.js";
import type { RestsOn } from "../../model/rests-on.js";
import type { Plan, PlanBath } from "../plan-model.js";

/** What one plan comes to, to be set beside others. */
export interface PlanResults {
  readonly cost: number | null;
  /** Of all good parts, and of each order's. */
  readonly costPerPart: number | null;
  readonly orderCostPerPart: readonly (number | null)[];
  readonly minutes: number;
  readonly operatorMinutes: number;
  readonly loads: number;
  readonly kWh: number;
  /** Taken up and rinsed away; also what is left of baths that are dumped. Null where no such dye is used. */
  readonly dyeUsedMl: number | null;
  readonly dyeUsedG: number | null;
  readonly baths: readonly { readonly lifeLoads: number; readonly lifeParts: number }[];
  readonly shortestDipSeconds: number;
  readonly longestDipSeconds: number;
  readonly warnings: number;
  /** The largest distance from a shade that is met as nearly as can be; null where no colour is known. */
  readonly largestDeltaE00: number | null;
  readonly restsOnAssumed: RestsOn;
}

/** The results of a plan. */
export function planResults(plan: Plan): PlanResults {
  const { totals, baths } = plan;
  const loads = baths.flatMap((bath) => bath.loads);
  const dips = mapped(loads, ({ dipSeconds }) => dipSeconds);
  const misses = loads.flatMap(({ deltaE00 }) => deltaE00 ?? []);
  const used = mapped(baths, dyeUsed);
  const sum = (unit: "mL" | "g"): number | null => {
    const amounts = used.filter((one) => one.unit === unit);
    return amounts.length === 0 ? null : amounts.reduce((total, { amount }) => total + amount, 0);
  };
  return {
    cost: totals.cost,
    costPerPart: totals.cost === null ? null : totals.cost / totals.good,
    orderCostPerPart: mapped(plan.orders, ({ costPerPart }) => costPerPart),
    minutes: totals.minutes,
    operatorMinutes: totals.operatorMinutes,
    loads: totals.loads,
    kWh: totals.kWh,
    dyeUsedMl: sum("mL"),
    dyeUsedG: sum("g"),
    baths: mapped(baths, ({ life }) => ({ lifeLoads: life.loads, lifeParts: life.parts })),
    shortestDipSeconds: smallest(dips),
    longestDipSeconds: largest(dips),
    warnings: plan.warnings.length + plan.exceeded.length,
    largestDeltaE00: misses.length === 0 ? null : largest(misses),
    restsOnAssumed: plan.restsOnAssumed,
  };
}

function dyeUsed({ dyeBalance: b, after }: PlanBath): { unit: "mL" | "g"; amount: number } {
  const [unit, used, left] =
    "takenUpMl" in b
      ? (["mL", b.takenUpMl + b.draggedOutMl, b.leftMl] as const)
      : (["g", b.takenUpG + b.draggedOutG, b.leftG] as const);
  return { unit, amount: after === "dump" ? used + left : used };
}
