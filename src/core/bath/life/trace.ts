import { mapped } from "../../mapped.js";
import type { Period } from "./period.js";

/** A load as the hand meets it: strength and volume before the dip, and the dip's time. */
export interface LoadRecord {
  /** Which of the repeated portions it is of, from 1. */
  readonly portion: number;
  readonly parts: number;
  readonly strength: number;
  readonly volumeL: number;
  readonly dipSeconds: number;
  /** Just before the parts go in. */
  readonly celsius: number;
}

/** One load of a life, counted from 1. */
export interface LifePoint extends LoadRecord {
  readonly load: number;
}

/** `count` whole numbers from 0 to `last`, both among them, as evenly as whole numbers can be. */
function spread(last: number, count: number): number[] {
  if (last < count) return Array.from({ length: last + 1 }, (_, i) => i);
  if (count === 1) return [last];
  return Array.from({ length: count }, (_, i) => Math.round((i * last) / (count - 1)));
}

/** The loads of a life to draw or print: all where they are few enough, else some, spread evenly. */
export function lifeTrace(life: {
  /** Of the loads that were worked; those after them go round in the period. */
  readonly records: readonly LoadRecord[];
  readonly period: Period | undefined;
  readonly loads: number;
  readonly points: number;
}): LifePoint[] {
  const { records, period, loads, points } = life;
  if (loads === 0 || points < 1) return [];
  const recordOf = (load: number): LoadRecord => {
    if (load < records.length || period === undefined) return records[load]!;
    return records[period.fromLoad + ((load - period.fromLoad) % period.perRound.loads)]!;
  };
  return mapped(spread(loads - 1, points), (load) => ({ load: load + 1, ...recordOf(load) }));
}
