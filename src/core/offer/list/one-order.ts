import { done, type Outcome } from "../../fault.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import type { Batch, Bath, Order } from "../../model/batch.js";
import type { SharedWork } from "../../plan/run/shared-work.js";
import { type WorkedBatch, workBatch } from "../../plan/run/work-batch.js";

/** An order with the bath that dyes it; none where it is sold undyed. */
export interface OfferedOrder {
  readonly order: Order;
  readonly bath?: Bath;
}

/** What one order costs when it is a batch of its own, and what it takes of hands, tank and dryer. */
export interface OneOrder {
  readonly costs: WorkedBatch["costs"];
  readonly handsMinutes: number;
  readonly tankMinutes: number;
  readonly dryerMinutes: number;
  /** Taken up and dragged out [mL of concentrate or g of powder]. */
  readonly dye: number;
  /** Good parts that a kept bath dyes before it is spent, in batches like this one; absent for a dumped bath. */
  readonly lifeParts?: number;
}

/** The batch that holds this order alone. What it costs is what `cost` says of it. */
const oneOrderBatch = (batch: Batch, { order, bath }: OfferedOrder): Batch => ({
  ...batch,
  baths: bath === undefined ? [] : [bath],
  orders: [{ ...order, index: 0 }],
});

/** Works an order as a batch of its own. */
export function workOneOrder(batch: Batch, offered: OfferedOrder, shared: SharedWork): Outcome<OneOrder> {
  const worked = workBatch(oneOrderBatch(batch, offered), "kept", shared);
  if (!worked.ok) return worked;
  const { costs, day, runs, lives } = worked.value;
  const inTank = day.entries.filter(({ tank }) => tank !== undefined);
  const dryer = batch.dryers[0];
  const life = lives[0]?.own;
  return done(
    {
      costs,
      handsMinutes: day.operatorMinutes,
      tankMinutes:
        inTank.reduce((latest, { endMinute }) => Math.max(latest, endMinute), 0) -
        inTank.reduce((first, { startMinute }) => Math.min(first, startMinute), inTank[0]?.startMinute ?? 0),
      dryerMinutes: dryer === undefined ? 0 : day.dryerRuns * dryer.minutes,
      dye: exactSumOf(
        runs.flatMap(({ loads }) => loads),
        ({ result }) => result.takenUp + result.draggedOut,
      ),
      ...(life === undefined ? {} : { lifeParts: life.parts * batch.yield }),
    },
    worked.faults,
  );
}
