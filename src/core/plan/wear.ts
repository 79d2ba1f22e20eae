import { done, type Outcome } from "../fault.js";
import { mapped } from "../mapped.js";
import type { Batch } from "../model/batch.js";
import { bathWear } from "./results/bath-wear.js";
import type { SharedWork } from "./run/shared-work.js";
import { workBatch } from "./run/work-batch.js";
import type { BatchWear } from "./wear-model.js";

/** How the baths of a batch wear, whatever is dyed in them. Errors as of a plan. */
export function batchWear(batch: Batch, shared?: SharedWork): Outcome<BatchWear> {
  const worked = workBatch(batch, "all", shared);
  if (!worked.ok) return worked;
  const { runs, lives, costs } = worked.value;
  return done(
    {
      batch: costs.batch,
      date: costs.date,
      currency: costs.currency,
      baths: mapped(runs, (run, i) => bathWear(batch, run, lives[i]!)),
      assumptions: costs.assumptions,
      warnings: costs.warnings,
    },
    worked.faults,
  );
}
