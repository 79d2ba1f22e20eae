import { mapped } from "../../mapped.js";
import { largest, smallest } from "../../maths/extent.js";
import type { RestsOn } from "../../model/rests-on.js";
import { dyeFigures, type FiguresOf, figureOfDye, kindWith } from "../../quantity/dye/dye-figures.js";
import type { DyeKind } from "../../quantity/dye/dye-kinds.js";
import type { Plan, PlanBath } from "../plan-model.js";

/** Dye taken up and rinsed away; also what is left of baths that are dumped. Null where no such dye is used. */
type UsedOf<Kind extends DyeKind> = FiguresOf<Kind, "used", number | null>;

/** What one plan comes to, to be set beside others. */
export interface PlanResults extends UsedOf<"liquid">, UsedOf<"powder"> {
  readonly cost: number | null;
  /** Of all good parts, and of each order's. */
  readonly costPerPart: number | null;
  readonly orderCostPerPart: readonly (number | null)[];
  readonly minutes: number;
  readonly operatorMinutes: number;
  readonly loads: number;
  readonly kWh: number;
  readonly baths: readonly { readonly lifeLoads: number; readonly lifeParts: number }[];
  /** Null where nothing is dyed. */
  readonly shortestDipSeconds: number | null;
  readonly longestDipSeconds: number | null;
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
  return {
    cost: totals.cost,
    costPerPart: totals.cost === null ? null : totals.cost / totals.good,
    orderCostPerPart: mapped(plan.orders, ({ costPerPart }) => costPerPart),
    minutes: totals.minutes,
    operatorMinutes: totals.operatorMinutes,
    loads: totals.loads,
    kWh: totals.kWh,
    ...usedOf("liquid", baths),
    ...usedOf("powder", baths),
    baths: mapped(baths, ({ life }) => ({ lifeLoads: life.loads, lifeParts: life.parts })),
    shortestDipSeconds: dips.length === 0 ? null : smallest(dips),
    longestDipSeconds: dips.length === 0 ? null : largest(dips),
    warnings: plan.warnings.length + plan.exceeded.length,
    largestDeltaE00: misses.length === 0 ? null : largest(misses),
    restsOnAssumed: plan.restsOnAssumed,
  };
}

function usedOf<Kind extends DyeKind>(kind: Kind, baths: readonly PlanBath[]): UsedOf<Kind> {
  const own = baths.filter(({ makeUp }) => kindWith(makeUp, "amount") === kind);
  const used = own.reduce((total, { dyeBalance: b, after }) => {
    const [takenUp, draggedOut, left] = (["takenUp", "draggedOut", "left"] as const).map((name) =>
      figureOfDye(b, name),
    ) as [number, number, number];
    return total + (after === "dump" ? takenUp + draggedOut + left : takenUp + draggedOut);
  }, 0);
  return dyeFigures(kind, { used: own.length === 0 ? null : used }) as UsedOf<Kind>;
}
