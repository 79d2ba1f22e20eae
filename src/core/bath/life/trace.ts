import { mapped } from "../../mapped.js";
import type { Period } from "./period.js";

/** A load as the hand meets it: strength and volume before the dip, and the dip's time. */
export interface LoadRecord {
  readonly strength: number;
  readonly volumeL: number;
  readonly dipSeconds: number;
}

/** One load of a life; `loadOfMix` says which of the repeated loads it is. Both count from 1. */
export interface LifePoint extends LoadRecord {
  readonly load: number;
  readonly loadOfMix: number;
}

/** `count` whole numbers from 0 to `last`, both among them, as evenly as whole numbers can be. */
function spread(last: number, count: number): number[] {
  if (last < count) return Array.from({ length: last + 1 }, (_, i) => i);
  if (count === 1) return [last];
  return Array.from({ length: count }, (_, i) => Math.round((i * last) / (count - 1)));
}

/**
 * The loads of a life to draw or print: all where they are few enough, else whole repetitions of the mix spread
 * over the life, so that each shade keeps a line of its own; single loads where even one repetition is too long.
 */
export function lifeTrace(life: {
  /** Of the loads that were worked; those after them go round in the period. */
  readonly records: readonly LoadRecord[];
  readonly period: Period | undefined;
  readonly loads: number;
  readonly mixLength: number;
  readonly points: number;
}): LifePoint[] {
  const { records, period, loads, mixLength, points } = life;
  if (loads === 0 || points < 1) return [];
  const recordOf = (load: number): LoadRecord => {
    if (load < records.length || period === undefined) return records[load]!;
    return records[period.fromLoad + ((load - period.fromLoad) % period.perRound.loads)]!;
  };
  const step = loads <= points || mixLength > points ? 1 : mixLength;
  const starts = spread(Math.ceil(loads / step) - 1, Math.max(1, Math.floor(points / step)));
  return mapped(
    starts
      .flatMap((start) => Array.from({ length: step }, (_, i) => start * step + i))
      .filter((load) => load < loads),
    (load) => ({ load: load + 1, loadOfMix: (load % mixLength) + 1, ...recordOf(load) }),
  );
}
