import type { Batch } from "../model/batch.js";
import { isDyed } from "../model/undyed.js";
import { costLines, lineRecords } from "./line/cost-lines.js";

/** True where the batch gives any money at all: without, a plan has no costs. */
export const hasMoney = (batch: Batch): boolean => costLines.some((line) => lineRecords[line].isGiven(batch));

/** What the cost sheet would need and was not given, in words: each counts as nothing. Undyed parts need their blanks. */
export const notCounted = (batch: Batch): string[] =>
  (batch.orders.some(isDyed) ? costLines : (["blank"] as const)).flatMap((line) =>
    lineRecords[line].missing(batch),
  );
