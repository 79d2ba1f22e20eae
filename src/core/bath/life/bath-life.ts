import { mapped } from "../../mapped.js";
import type { TopUpRule } from "../../model/batch.js";
import { lookUp } from "../heat/working/celsius-table.js";
import type { BathSetting } from "../load/bath-setting.js";
import { fill } from "../load/fill.js";
import { handsOnWait } from "../load/hands-on-wait.js";
import { nextLoad } from "../load/load-size.js";
import type { LoadWork } from "../load/load-work.js";
import { type Hindrance, mostParts, workOn } from "../load/work-load.js";
import { bathToWork, type WorkedBath } from "../load/worked-bath.js";
import { addedTotals, type LifeTotals, noTotals } from "./life-totals.js";
import { type Period, periodFinder } from "./period.js";
import { type LifePoint, type LoadRecord, lifeTrace } from "./trace.js";

/** What ends a bath: a dip longer than the longest, no time at all, age, too little liquor, or the limit of the count. */
export type LifeEnd = Hindrance | "shelf-life" | "load-limit";

/** A bath's whole life under one rule. Dye is mL of concentrate or g of powder. */
export interface BathLife extends LifeTotals {
  readonly rule: TopUpRule;
  /** Repetitions of the mix that were finished. */
  readonly repeats: number;
  /** Age at which a fresh bath is needed; null where it is not known how often the mix is repeated. */
  readonly days: number | null;
  readonly dyeUsed: number;
  readonly dyeLeft: number;
  /** The same of each dye of a mix. */
  readonly dyeUsedEach?: readonly number[];
  readonly dyeLeftEach?: readonly number[];
  readonly endedBy: LifeEnd;
  /** Load by load, or repetitions spread over the life where it is long. */
  readonly trace: readonly LifePoint[];
}

/** The count of loads at which a life is called endless. */
export const lifeLoadLimit = 10_000;

/** Repetitions that fit before the shelf life, the first one made on day 0. */
const repeatsInShelfLife = (everyDays = 0, shelfLifeDays = Number.POSITIVE_INFINITY): number =>
  everyDays > 0 ? Math.floor((shelfLifeDays / everyDays) * (1 + 1e-12)) + 1 : Number.POSITIVE_INFINITY;

/** Between repetitions the bath cools, its jug or tank stands, and it is filled by its rule and heated again. */
function restOf(setting: BathSetting): (bath: WorkedBath) => void {
  const { heat, handling, cooled } = setting;
  return (bath) => {
    if (cooled !== undefined && bath.celsius > handling.coolToCelsius)
      bath.volumeL *= lookUp(cooled, bath.celsius);
    fill(setting, bath, 1);
    bath.loadsRinsed = 0;
    bath.celsius = heat.celsius;
  };
}

/**
 * Repeats the work of a batch on a fresh bath until a dip passes the longest, the shelf life passes (the work repeated
 * every so many days), the liquor falls under what the heater or one part needs, or 10,000 loads. Loads are sized
 * for the liquor that is there, so that they shrink with it.
 *
 * A bath that comes back to the state in which an earlier repetition began would go on so for ever: those
 * rounds are counted, not worked.
 */
export function bathLife(
  setting: BathSetting,
  /** Parts of one kind each; so many as are dyed in a repetition. */
  portions: readonly LoadWork[],
  age: {
    readonly everyDays?: number;
    readonly shelfLifeDays?: number;
    /** About so many points of the trace are kept; none with 0. */
    readonly tracePoints?: number;
  },
): BathLife {
  const { handling, fresh, rule, heat } = setting;
  const lastRepeats = repeatsInShelfLife(age.everyDays, age.shelfLifeDays);
  const records: LoadRecord[] = [];
  const traced = age.tracePoints !== 0;
  const returned = periodFinder();
  const bath = bathToWork(fresh, heat.celsius);
  const rest = restOf(setting);
  let period: Period | undefined;
  let repeats = 0;
  // Written to in place, since there are ten thousand loads.
  let totals: { -readonly [Key in keyof LifeTotals]: LifeTotals[Key] } = {
    ...noTotals,
    ...(fresh.dyeEach && { addedEach: fresh.dyeEach.map(() => 0) }),
  };
  const loads = mapped(portions, (portion): LoadWork & { parts: number } => ({ ...portion }));
  const poured = (): void => {
    totals.added += bath.topUpDye;
    totals.waterMl += bath.topUpWaterMl;
    if (totals.addedEach !== undefined)
      totals.addedEach = totals.addedEach.map((added, i) => added + bath.topUpDyeEach[i]!);
  };
  const work = (index: number): LifeEnd | undefined => {
    const load = loads[index]!;
    let left = portions[index]!.parts;
    while (left > 0) {
      if (totals.loads >= lifeLoadLimit) return "load-limit";
      const most = mostParts(setting, bath, load.part);
      if (most < 1) return "too-little-liquor";
      load.parts = nextLoad(left, most);
      left -= load.parts;
      const hindered = workOn(bath, setting, load, handling.longestSeconds);
      if (hindered !== undefined) return hindered;
      if (period === undefined && traced) records.push(recordOf(bath, index, load.parts));
      totals.loads++;
      totals.parts += load.parts;
      totals.areaDm2 += load.parts * load.part.areaDm2;
      totals.takenUp += bath.takenUp;
      totals.draggedOut += bath.draggedOut;
      totals.dipSeconds += bath.dipSeconds;
      totals.waitSeconds += handsOnWait(bath.waitSeconds);
      totals.tendingSeconds += bath.tendingSeconds;
      poured();
    }
    return undefined;
  };
  const end = (endedBy: LifeEnd): BathLife => ({
    rule,
    ...totals,
    repeats,
    days: age.everyDays === undefined ? null : daysOf(endedBy, repeats * age.everyDays, age.shelfLifeDays),
    dyeUsed: fresh.dye + totals.added,
    dyeLeft: bath.dye,
    ...(totals.addedEach && {
      dyeUsedEach: totals.addedEach.map((added, i) => added + fresh.dyeEach![i]!),
      dyeLeftEach: bath.dyeEach!,
    }),
    endedBy,
    trace: lifeTrace({ records, period, loads: totals.loads, points: age.tracePoints ?? 60 }),
  });
  if (portions.length === 0) return end("load-limit");
  for (; ; repeats++) {
    // Before the next one is filled for: what is past its shelf life gets nothing more.
    if (repeats >= lastRepeats) return end("shelf-life");
    if (repeats > 0) {
      rest(bath);
      poured();
    }
    if (period === undefined) {
      period = returned(bath, repeats, totals);
      if (period !== undefined) {
        const rounds = Math.floor(
          Math.min(
            (lifeLoadLimit - totals.loads) / period.perRound.loads,
            (lastRepeats - 1 - repeats) / period.repeats,
          ),
        );
        totals = addedTotals(totals, period.perRound, rounds);
        repeats += rounds * period.repeats;
      }
    }
    for (let index = 0; index < loads.length; index++) {
      const ended = work(index);
      if (ended !== undefined) return end(ended);
    }
  }
}

const recordOf = (bath: WorkedBath, index: number, parts: number): LoadRecord => ({
  portion: index + 1,
  parts,
  strength: bath.strengthBefore,
  volumeL: bath.volumeBeforeL,
  dipSeconds: bath.dipSeconds,
  celsius: bath.celsiusBefore,
});

/** A bath past its shelf life is thrown out on the day it ends, others on the day they fail. */
const daysOf = (endedBy: LifeEnd, days: number, shelfLifeDays = Number.POSITIVE_INFINITY): number =>
  endedBy === "shelf-life" ? Math.min(days, shelfLifeDays) : days;
