import { done } from "../../core/fault.js";
import { batchWear } from "../../core/plan/wear.js";
import { bathReport } from "../../report/bath/report.js";
import { onBatch } from "../batch/on-batch.js";
import type { Execute } from "../command.js";

/** How the baths of one batch wear. */
export const execute: Execute = (request, io) =>
  onBatch(request, io, ["baths", "orders"], (batch, _spec, shared) => {
    const wear = batchWear(batch, shared);
    return wear.ok ? done({ report: bathReport(wear.value) }, wear.faults) : wear;
  });
