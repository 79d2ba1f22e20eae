import { mapped } from "../../mapped.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import type { BatchCosts, CostedOrder } from "../batch-costs.js";
import { type CostDrivers, noRates } from "../line/drivers.js";

/** One order with its batch. */
export interface OrderCost extends CostedOrder {
  readonly batch: string;
  readonly date: string | null;
  readonly drivers: CostDrivers | null;
}

/** One batch of a cost report, without its baths and timeline: small enough to keep thousands. */
export interface CostBatch
  extends Pick<
    BatchCosts,
    | "batch"
    | "date"
    | "currency"
    | "totals"
    | "colours"
    | "notCounted"
    | "assumptions"
    | "warnings"
    | "exceeded"
  > {
  readonly baths: readonly BathName[];
  readonly orders: readonly OrderCost[];
}

/** What a comparison needs of a cost report. */
export interface CostSnapshot {
  /** Files whose orders are missing, since they could not be costed. */
  readonly filesNotCosted?: number;
  readonly currency: string | null;
  readonly orders: readonly OrderCost[];
}

interface BathName {
  readonly tank: string;
  readonly dye: string;
}

interface Load {
  readonly order: number;
  readonly parts: number;
  readonly dipSeconds: number;
  readonly cycleSeconds: number;
  readonly strengthBefore: number;
}

/** What a cost report keeps of a plan, or of a batch that was worked for its costs alone. */
export interface CostSource
  extends Omit<CostBatch, "orders" | "baths">,
    Pick<BatchCosts, "orders" | "prices"> {
  readonly baths: readonly (BathName & { readonly loads: readonly Load[] })[];
}

/** Every order's loads, over all baths, and the dye of the bath of its first. */
function loadsByOrder(plan: CostSource): Map<number, { readonly dye: string; readonly loads: Load[] }> {
  const found = new Map<number, { dye: string; loads: Load[] }>();
  for (const { dye, loads } of plan.baths)
    for (const load of loads) {
      const known = found.get(load.order);
      if (known) known.loads.push(load);
      else found.set(load.order, { dye, loads: [load] });
    }
  return found;
}

function driversOf(
  { prices }: CostSource,
  own: { readonly dye: string; readonly loads: Load[] } | undefined,
): CostDrivers | null {
  if (!own) return null;
  const { dye, loads } = own;
  const { rates, dyes } = prices;
  const mean = (of: (load: Load) => number): number => exactSumOf(loads, of) / loads.length;
  return {
    dye,
    dyePrice: dyes.find((priced) => priced.dye === dye)?.price ?? null,
    loads: loads.length,
    partsPerLoad: mean((load) => load.parts),
    dipSeconds: mean((load) => load.dipSeconds),
    cycleSeconds: mean((load) => load.cycleSeconds),
    strength: mean((load) => load.strengthBefore),
    ...noRates,
    ...rates,
  };
}

/** A batch as the cost report keeps it. */
export function costBatch(plan: CostSource): CostBatch {
  const { batch, date, currency, totals, colours, notCounted, assumptions, warnings, exceeded } = plan;
  const loads = loadsByOrder(plan);
  return {
    batch,
    date,
    currency,
    totals,
    colours,
    notCounted,
    assumptions,
    warnings,
    exceeded,
    baths: mapped(plan.baths, ({ tank, dye }) => ({ tank, dye })),
    orders: mapped(plan.orders, (order) => ({
      batch,
      date,
      ...order,
      drivers: driversOf(plan, loads.get(order.order)),
    })),
  };
}
