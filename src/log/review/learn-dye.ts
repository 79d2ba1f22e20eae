import { type Estimates, estimate } from "../../core/quality/estimates/estimate.js";
import type { Figures } from "../../core/quality/estimates/figures.js";
import { type LastFactor, lastFactor } from "../../core/quality/estimates/last-readings.js";
import type { DyeLog, FollowedFilling } from "./dye-log.js";
import type { LoadReading } from "./dye-readings.js";

/** A load whose colour was read, beside what the learned figures make of it. */
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
  /** Of it, what is more than noise: 1 where nothing is. */
  readonly lately: number;
  /** For plans from now on: told figures, and times as the last readings have them. */
  readonly toUse: Figures;
  /** Whether anything in it differs from what the batch file has. */
  readonly teaches: boolean;
  readonly fillings: readonly FollowedFilling[];
  readonly foreseen: readonly Foreseen[];
}

/** A factor nearer to 1 than its own standard error changes nothing: what it would correct may be chance. */
const worthIt = (factor: number, relativeError: number): number =>
  Math.abs(Math.log(factor)) > relativeError ? factor : 1;

export function learnDye({ evidence, priors, readings, follow }: DyeLog): LearnedDye {
  const estimates = estimate(evidence, priors);
  const { timeFactor } = estimates.figures;
  const steady = {
    ...estimates.toUse,
    timeFactor: worthIt(estimates.toUse.timeFactor, timeFactor.standardError / timeFactor.value),
  };
  const fillings = follow(steady);
  const dips = new Map(fillings.flatMap(({ after }) => after.map(({ row, dip }) => [row, dip])));
  const foreseen = readings.map((reading): Foreseen => {
    const { freshSeconds } = dips.get(reading.row)!;
    return { reading, apart: Math.log(freshSeconds) - reading.logFresh, freshSeconds };
  });
  const last = lastFactor(
    foreseen.map(({ apart }) => apart),
    readings.map(({ deviation }) => deviation),
  );
  const error = last === undefined ? 0 : readings.at(-1)!.deviation / Math.sqrt(last.readings);
  const lately = last === undefined ? 1 : worthIt(last.factor, error);
  const toUse = { ...steady, timeFactor: steady.timeFactor * lately };
  const { figures } = estimates;
  return {
    estimates,
    last,
    lately,
    toUse,
    teaches:
      toUse.timeFactor !== 1 ||
      Object.entries(figures).some(([name, { told }]) => told && name !== "timeFactor"),
    fillings,
    foreseen,
  };
}
