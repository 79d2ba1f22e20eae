import type { RestsOn } from "../model/rests-on.js";

/** What a cost may rest on that nobody gave or measured. */
const assumedNames = ["uptake", "dragOut", "handlingTimes", "liquorRatio"] as const;
export type AssumedName = (typeof assumedNames)[number];

/** Shares [0..1] of an amount that rest on something assumed; one amount may rest on several things. */
export type RestingShares = Readonly<Partial<Record<AssumedName, number>>>;

/** An amount of money, and what it rests on. */
interface RestingAmount {
  readonly amount: number;
  readonly rests?: RestingShares;
}

/** How much of a cost rests on one assumption, 0..1. */
export interface AssumedShare {
  readonly what: AssumedName;
  readonly share: number;
}

/** How much of the cost of some items rests on each assumption, the largest first; nothing where nothing is assumed. */
export function assumedShares(items: readonly RestingAmount[]): AssumedShare[] {
  // Shares are rough, and each of ten thousand batches has dozens of items: no exact sums.
  const resting: Record<AssumedName, number> = { uptake: 0, dragOut: 0, handlingTimes: 0, liquorRatio: 0 };
  let total = 0;
  for (const { amount, rests } of items) {
    total += amount;
    if (rests !== undefined) for (const what of assumedNames) resting[what] += amount * (rests[what] ?? 0);
  }
  return assumedNames
    .filter((what) => resting[what] > 0)
    .map((what) => ({ what, share: resting[what] / total }))
    .sort((a, b) => b.share - a.share);
}

/** A cost of which less rests on an assumption is as good as measured [-]. Common practice, no source. */
const assumedMatters = 0.05;

/** Of what a cost rests on, what carries enough of it to matter. */
export const restsThatMatter = (rests: RestsOn, shares: readonly AssumedShare[]): RestsOn =>
  rests.filter((what) => shares.some((one) => one.what === what && one.share >= assumedMatters));
