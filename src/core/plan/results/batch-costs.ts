import { dryingKwh } from "../../bath/heat/power.js";
import type { BathLife } from "../../bath/life/bath-life.js";
import { allocate, sheetOf } from "../../cost/allocate.js";
import { assumedShares } from "../../cost/assumed-shares.js";
import type { BatchCosts } from "../../cost/batch-costs.js";
import { bathItems, partItems } from "../../cost/items.js";
import { sheetTotal } from "../../cost/line/cost-sheet.js";
import { hasMoney, notCounted } from "../../cost/missing.js";
import { colourCosts } from "../../cost/price/colour-costs.js";
import { pricesOf } from "../../cost/rate/plan-prices.js";
import { done, failed, type Outcome } from "../../fault.js";
import { mapped } from "../../mapped.js";
import type { Batch } from "../../model/batch.js";
import { restsOnAny } from "../../model/rests-on.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";
import type { Timeline } from "../day/timeline.js";
import type { BathRun } from "../run/bath-run.js";
import { bathUse } from "../run/bath-use.js";
import { costedOrder, overLimit } from "./costed-order.js";

/** What costs follow from: the worked baths, one life each (absent for dumped ones), and the day. */
export interface WorkDone {
  readonly runs: readonly BathRun[];
  readonly lives: readonly (BathLife | undefined)[];
  /** By order index, as `started`, the parts started. */
  readonly aims: readonly ShadeAim[];
  readonly started: readonly number[];
  readonly day: Timeline;
}

/**
 * What a worked batch costs, by order and in all; no amounts where no prices are given. Errors where no price can
 * pay for an order.
 */
export function batchCosts(
  batch: Batch,
  { runs, lives, aims, started, day }: WorkDone,
): Outcome<Omit<BatchCosts, "assumptions" | "warnings">> {
  const uses = hasMoney(batch) ? mapped(runs, (run, i) => bathUse(batch, run, lives[i])) : undefined;
  const shared = partItems(batch, started, day.dryerRuns);
  const items = uses && [...shared, ...uses.flatMap(bathItems)];
  const sheets = items && allocate(items, batch.orders.length);
  const priced = mapped(batch.orders, (order) =>
    costedOrder(batch, order, aims[order.index], started[order.index]!, sheets?.[order.index]),
  );
  const priceFaults = priced.flatMap(({ faults }) => faults);
  if (priceFaults.length > 0) return failed(...priceFaults.slice(0, 1));
  const orders = mapped(priced, ({ value }) => value);
  const lines = items ? sheetOf(items) : null;
  const restsOnAssumed = restsOnAny(
    mapped(runs, ({ bath }) => bath.dye),
    batch.handling,
  );
  return done({
    batch: batch.name,
    date: batch.date ?? null,
    currency: batch.currency ?? null,
    orders,
    totals: {
      cost: lines && sheetTotal(lines),
      lines,
      good: batch.orders.reduce((sum, order) => sum + order.quantity, 0),
      started: started.reduce((sum, count) => sum + count, 0),
      loads: runs.reduce((sum, run) => sum + run.loads.length, 0),
      minutes: day.minutes,
      operatorMinutes: day.operatorMinutes,
      dryerRuns: day.dryerRuns,
      kWh: kwhOfDay(batch, runs, day),
      restsOnAssumed,
      assumedShares: items ? assumedShares(items) : [],
    },
    restsOnAssumed,
    colours: uses
      ? colourCosts(batch, uses, mapped(allocate(shared, batch.orders.length), sheetTotal), orders)
      : [],
    prices: pricesOf(batch),
    notCounted: items ? notCounted(batch) : [],
    exceeded: orders.flatMap((order) => overLimit(batch, order)),
  });
}

/** Heaters, agitation and drying. */
function kwhOfDay({ dryers }: Batch, runs: readonly BathRun[], day: Timeline): number {
  const dryer = dryers[0];
  return (
    runs.reduce((sum, { energy }) => sum + energy.heaterKwh + energy.agitationKwh, 0) +
    (dryer ? dryingKwh(dryer, day.dryerRuns) : 0)
  );
}
