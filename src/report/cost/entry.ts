import type { CostBatch } from "../../core/cost/history/snapshot.js";
import type { Spread } from "../../core/cost/spread/spread.js";
import type { PlanFigure } from "../../core/plan/results/spread-outputs.js";
import { assumedRecords } from "../words/assumed.js";

/** One batch of a cost report, with its spread where that was asked for. */
export interface CostEntry extends CostBatch {
  readonly spread?: Spread<PlanFigure>;
}

/** Every order as JSON and ndjson give it. */
export const orderRecords = ({ orders, spread }: CostEntry): Record<string, unknown>[] =>
  orders.map((order, i) => ({
    ...order,
    ...(spread && {
      spread: {
        costPerPart: spread.outputs.costPerPart?.[i] ?? null,
        dipSeconds: spread.outputs.dipSeconds?.[i] ?? null,
      },
    }),
  }));

/** The batch as JSON gives it, beside its orders. */
export function batchRecord({
  orders: _,
  currency: __,
  spread,
  baths,
  ...entry
}: CostEntry): Record<string, unknown> {
  const batch = { ...entry, assumptions: assumedRecords(entry.assumptions) };
  if (!spread) return batch;
  const { draws, seed, failed, cost, outputs, ranking } = spread;
  const lives = baths.map((bath, i) => ({
    ...bath,
    lifeParts: outputs.lifeParts?.[i] ?? null,
    lifeLoads: outputs.lifeLoads?.[i] ?? null,
  }));
  return {
    ...batch,
    spread: {
      draws,
      seed,
      failed,
      cost,
      baths: lives,
      ranking: ranking.map(({ path, ...weight }) => ({ path: path.join("."), ...weight })),
    },
  };
}
