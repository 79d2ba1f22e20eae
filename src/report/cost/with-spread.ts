import { costBatch } from "../../core/cost/history/snapshot.js";
import type { Spread } from "../../core/cost/spread/spread.js";
import type { Plan } from "../../core/plan/plan-model.js";
import type { PlanFigure } from "../../core/plan/results/spread-outputs.js";
import type { Report } from "../report.js";
import { batchRecord, orderRecords } from "./entry.js";
import { spreadBlocks } from "./spread-blocks.js";

/** A plan's report that also tells how sure its costs, dips and bath lives are. */
export function withSpread(report: Report, plan: Plan, spread: Spread<PlanFigure>): Report {
  const entry = { ...costBatch(plan), spread };
  const { spread: whole } = batchRecord(entry);
  const orders = orderRecords(entry).map(({ order, part, shade, spread: drawn }) => ({
    order,
    part,
    shade,
    ...(drawn as object),
  }));
  return {
    ...report,
    data: { ...report.data, spread: { ...(whole as object), orders } },
    blocks: [...report.blocks, ...spreadBlocks([entry], plan.currency)],
  };
}
