import type { TopUpRule } from "../batch/model.js";
import { type BathSetting, type LoadWork, workLoad } from "./run.js";

/** What ends a bath: a dip longer than the longest, no time at all, age, too little liquor, or the limit of the count. */
export type LifeEnd = "longest-dip" | "too-weak" | "shelf-life" | "too-little-liquor" | "load-limit";

/** A bath's whole life under one rule. Dye is mL of concentrate or g of powder. */
export interface BathLife {
  readonly rule: TopUpRule;
  readonly loads: number;
  readonly parts: number;
  readonly areaDm2: number;
  readonly dyeUsed: number;
  readonly dyeLeft: number;
  readonly waterMl: number;
  readonly endedBy: LifeEnd;
}

/** One load of the mix that is repeated. */
export interface LifeLoad extends LoadWork {
  readonly parts: number;
  readonly massG: number;
}

/** The count of loads at which a life is called endless. */
export const lifeLoadLimit = 10_000;

/**
 * Repeats a mix of loads on a fresh bath until a dip passes the longest, the shelf life passes (the mix
 * repeated every so many days), the liquor no longer meets the least liquor ratio, or 10,000 loads.
 */
export function bathLife(
  setting: BathSetting,
  mix: readonly LifeLoad[],
  age: { readonly everyDays?: number; readonly shelfLifeDays?: number },
): BathLife {
  const { handling, fresh, rule } = setting;
  let state = fresh;
  let loads = 0;
  let parts = 0;
  let areaDm2 = 0;
  let added = 0;
  let waterMl = 0;
  const end = (endedBy: LifeEnd): BathLife => ({
    rule,
    loads,
    parts,
    areaDm2,
    dyeUsed: fresh.dye + added,
    dyeLeft: state.dye,
    waterMl,
    endedBy,
  });
  if (mix.length === 0) return end("load-limit");
  for (let repeat = 0; ; repeat++) {
    if (repeat * (age.everyDays ?? 0) > (age.shelfLifeDays ?? Number.POSITIVE_INFINITY))
      return end("shelf-life");
    for (const load of mix) {
      if (loads === lifeLoadLimit) return end("load-limit");
      // The working volume met the ratio; only what is lost without a refill can break it.
      if (1000 * state.volumeL < handling.liquorRatioLPerKg * load.massG * (1 - 1e-9))
        return end("too-little-liquor");
      const result = workLoad(setting, state, load);
      if (result === undefined) return end("too-weak");
      if (result.seconds > handling.longestSeconds) return end("longest-dip");
      state = result.after;
      loads++;
      parts += load.parts;
      areaDm2 += load.areaDm2;
      added += result.topUp?.dye ?? 0;
      waterMl += result.topUp?.waterMl ?? 0;
    }
  }
}
