import type { TopUpRule } from "../../model/batch.js";
import {
  type BathSetting,
  bathToWork,
  type Hindrance,
  type LoadWork,
  tooLittleLiquor,
  workOn,
} from "../load/work-load.js";
import { addedTotals, type LifeTotals, noTotals } from "./life-totals.js";
import { type Period, periodFinder } from "./period.js";
import { type LifePoint, type LoadRecord, lifeTrace } from "./trace.js";

/** What ends a bath: a dip longer than the longest, no time at all, age, too little liquor, or the limit of the count. */
export type LifeEnd = Hindrance | "shelf-life" | "too-little-liquor" | "load-limit";

/** A bath's whole life under one rule. Dye is mL of concentrate or g of powder. */
export interface BathLife extends LifeTotals {
  readonly rule: TopUpRule;
  /** Repetitions of the mix that were finished. */
  readonly repeats: number;
  /** Age at which a fresh bath is needed; null where it is not known how often the mix is repeated. */
  readonly days: number | null;
  readonly dyeUsed: number;
  readonly dyeLeft: number;
  readonly endedBy: LifeEnd;
  /** Load by load, or repetitions spread over the life where it is long. */
  readonly trace: readonly LifePoint[];
}

/** One load of the mix that is repeated. */
export interface LifeLoad extends LoadWork {
  readonly parts: number;
  readonly massG: number;
}

/** The count of loads at which a life is called endless. */
export const lifeLoadLimit = 10_000;

/** Repetitions that fit before the shelf life, the first one made on day 0. */
const repeatsInShelfLife = (everyDays = 0, shelfLifeDays = Number.POSITIVE_INFINITY): number =>
  everyDays > 0 ? Math.floor((shelfLifeDays / everyDays) * (1 + 1e-12)) + 1 : Number.POSITIVE_INFINITY;

/**
 * Repeats a mix of loads on a fresh bath until a dip passes the longest, the shelf life passes (the mix
 * repeated every so many days), the liquor no longer meets the least liquor ratio, or 10,000 loads.
 *
 * A bath that comes back to the state in which an earlier repetition began would go on so for ever: those
 * rounds are counted, not worked.
 */
export function bathLife(
  setting: BathSetting,
  mix: readonly LifeLoad[],
  age: {
    readonly everyDays?: number;
    readonly shelfLifeDays?: number;
    /** About so many points of the trace are kept; none with 0. */
    readonly tracePoints?: number;
  },
): BathLife {
  const { handling, fresh, rule } = setting;
  const lastRepeats = repeatsInShelfLife(age.everyDays, age.shelfLifeDays);
  const records: LoadRecord[] = [];
  const traced = age.tracePoints !== 0;
  const returned = periodFinder();
  const bath = bathToWork(fresh);
  let period: Period | undefined;
  let repeats = 0;
  // Written to in place, since there are ten thousand loads.
  let totals: { -readonly [Key in keyof LifeTotals]: number } = { ...noTotals };
  const end = (endedBy: LifeEnd): BathLife => ({
    rule,
    ...totals,
    repeats,
    days: age.everyDays === undefined ? null : daysOf(endedBy, repeats * age.everyDays, age.shelfLifeDays),
    dyeUsed: fresh.dye + totals.added,
    dyeLeft: bath.dye,
    endedBy,
    trace: lifeTrace({
      records,
      period,
      loads: totals.loads,
      mixLength: mix.length,
      points: age.tracePoints ?? 60,
    }),
  });
  if (mix.length === 0) return end("load-limit");
  for (; ; repeats++) {
    if (period === undefined) {
      period = returned(bath, repeats, totals);
      if (period !== undefined) {
        const rounds = Math.floor(
          Math.min(
            (lifeLoadLimit - totals.loads) / period.perRound.loads,
            (lastRepeats - repeats) / period.repeats,
          ),
        );
        totals = addedTotals(totals, period.perRound, rounds);
        repeats += rounds * period.repeats;
      }
    }
    if (repeats >= lastRepeats) return end("shelf-life");
    for (const load of mix) {
      if (totals.loads >= lifeLoadLimit) return end("load-limit");
      if (tooLittleLiquor(handling, bath, load.massG)) return end("too-little-liquor");
      const hindered = workOn(bath, setting, load, handling.longestSeconds);
      if (hindered !== undefined) return end(hindered);
      if (period === undefined && traced)
        records.push({
          strength: bath.strengthBefore,
          volumeL: bath.volumeBeforeL,
          dipSeconds: bath.seconds,
        });
      totals.loads++;
      totals.parts += load.parts;
      totals.areaDm2 += load.areaDm2;
      totals.takenUp += bath.takenUp;
      totals.draggedOut += bath.draggedOut;
      totals.added += bath.topUpDye;
      totals.waterMl += bath.topUpWaterMl;
      totals.dipSeconds += bath.seconds;
    }
  }
}

/** A bath past its shelf life is thrown out on the day it ends, others on the day they fail. */
const daysOf = (endedBy: LifeEnd, days: number, shelfLifeDays = Number.POSITIVE_INFINITY): number =>
  endedBy === "shelf-life" ? Math.min(days, shelfLifeDays) : days;
