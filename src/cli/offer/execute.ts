import { done } from "../../core/fault.js";
import { offerOf } from "../../core/offer/offer.js";
import { offerReport } from "../../report/offer/report.js";
import { onBatch } from "../batch/on-batch.js";
import type { Execute } from "../command.js";
import { readWish } from "./read-wish.js";

/** Colours, prices, and when a colour pays. */
export const execute: Execute = (request, io) =>
  onBatch(request, io, ["tanks", "dyes", "parts"], (batch, _spec, shared) => {
    const wish = readWish(request.options);
    if (!wish.ok) return wish;
    const offer = offerOf(batch, wish.value, shared);
    return offer.ok ? done({ report: offerReport(offer.value) }, offer.faults) : offer;
  });
