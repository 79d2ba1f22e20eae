import type { CostSource } from "../../cost/history/snapshot.js";
import { done, type Outcome } from "../../fault.js";
import { mapped } from "../../mapped.js";
import type { Batch } from "../../model/batch.js";
import type { SharedWork } from "../run/shared-work.js";
import { workBatch } from "../run/work-batch.js";

/** What a batch costs: the figures of its plan, without what only a run sheet prints. Errors as of a plan. */
export function costSource(batch: Batch, shared?: SharedWork): Outcome<CostSource> {
  const worked = workBatch(batch, "kept", shared);
  if (!worked.ok) return worked;
  const baths = mapped(worked.value.runs, ({ bath, loads }) => ({
    tank: bath.tank.name,
    dye: bath.dye.name,
    loads: mapped(loads, ({ plan, result }) => ({
      order: plan.order.index + 1,
      parts: plan.parts,
      dipSeconds: result.dipSeconds,
      cycleSeconds: result.cycleSeconds,
      strengthBefore: result.strengthBefore,
    })),
  }));
  return done({ ...worked.value.costs, baths }, worked.faults);
}
