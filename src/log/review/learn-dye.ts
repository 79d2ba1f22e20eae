import { type Estimates, estimate } from "../../core/quality/estimates/estimate.js";
import type { Figures } from "../../core/quality/estimates/figures.js";
import { type LastFactor, lastFactor } from "../../core/quality/estimates/last-readings.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import { type DyeLog, logFresh } from "./dye-log.js";
import type { LoadReading } from "./dye-readings.js";
import type { FollowedFilling } from "./followed-filling.js";

/** A load whose colour was read, beside what all figures as they fit best make of it. */
export interface Foreseen {
  readonly reading: LoadReading;
  /** ln of the fresh time foreseen less that of the colour read: how much longer the dip should have been. */
  readonly apart: number;
  readonly freshSeconds: number;
}

/** What the log teaches of a dye. */
export interface LearnedDye {
  readonly estimates: Estimates;
  /** What the last readings ask for beside the estimates; undefined with too few. */
  readonly last: LastFactor | undefined;
  /** For plans from now on: told figures, and times as the last readings have them. */
  readonly toUse: Figures;
  /** Whether anything in it differs from what the batch file has. */
  readonly teaches: boolean;
  /** With the told figures. */
  readonly fillings: readonly FollowedFilling[];
  /** In the order of time. */
  readonly foreseen: readonly Foreseen[];
}

/** Digits of the time factor that is pasted. */
export const factorDigits = 3;

/** Whether a factor on times changes nothing of the one that is there, as it is written. */
const sameWritten = (there: number, by: number): boolean =>
  shortNumber(there * by, factorDigits) === shortNumber(there, factorDigits);

export function learnDye({ dye, evidence, priors, readings, follow }: DyeLog): LearnedDye {
  const estimates = estimate(evidence, priors);
  const { figures, best, toUse: steady } = estimates;
  const fillings = follow(steady);
  const explained = logFresh(readings, follow(best));
  const last = lastFactor(
    readings.map(({ logFresh, deviation, swatchDeviation, row }, i) => ({
      apart: explained[i]! - logFresh,
      deviation,
      shade: `${row.shade} ${row.base}`,
      swatchDeviation,
    })),
  );
  const timeFactor = steady.timeFactor * (last?.factor ?? 1);
  const toUse = { ...steady, timeFactor: sameWritten(dye.timeFactor ?? 1, timeFactor) ? 1 : timeFactor };
  const foreseen = explained.map((fresh, i): Foreseen => {
    const reading = readings[i]!;
    return { reading, apart: fresh - reading.logFresh, freshSeconds: Math.exp(fresh) };
  });
  return {
    estimates,
    last,
    toUse,
    teaches:
      toUse.timeFactor !== 1 ||
      Object.entries(figures).some(([name, { told }]) => told && name !== "timeFactor"),
    fillings,
    foreseen,
  };
}
