import type { Batch, Lab } from "../../../src/core/model/batch.js";
import { defaults } from "../../../src/core/model/defaults.js";
import { type Learnable, learnable } from "../../../src/core/quality/estimates/figures.js";
import { lotShifts } from "../../../src/core/quality/lots/lot-shifts.js";
import { dyeLog } from "../../../src/log/review/dye-log.js";
import { type LearnedDye, learnDye } from "../../../src/log/review/learn-dye.js";
import { lotReadings } from "../../../src/log/review/lots.js";
import { drawnTruth, seeded, shared, type Truth, work } from "./workshop.js";

/** What the tool makes of one invented workshop's log. */
export interface Studied {
  /** Its time factor is the one that makes the next ten loads right with what was learned. */
  readonly truth: Truth;
  readonly learned: LearnedDye;
  /** Mean CIEDE2000 of the next ten loads. */
  readonly missLearned: number;
  readonly missAssumed: number;
  /** How many of them nobody would accept. */
  readonly failedLearned: number;
  readonly failedAssumed: number;
  /** ln of the times of the next ten loads over the right ones, in the mean, with what was learned: as the sheet asks. */
  readonly askedOff: number;
  /** The same as a hand timed them. */
  readonly dippedOff: number;
  /** With every figure as it fits best, told or not: what the readings hold at all. */
  readonly bestOff: number;
}

export function learn(batch: Batch, rows: Parameters<typeof dyeLog>[2]): LearnedDye {
  const log = dyeLog(batch, batch.baths[0]!.dye, rows, shared);
  if (!log.ok) throw new Error(JSON.stringify(log.faults));
  return learnDye(log.value);
}

const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;
export const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
export const share = (values: readonly boolean[]): number => values.filter(Boolean).length / values.length;

/** Loads beyond the usual tolerance. */
const failed = (misses: readonly number[]): number =>
  misses.filter((miss) => miss > defaults.shade.tolerance).length;

/** One workshop: so many loads are logged, then ten more are planned with what was learned, and with what was assumed. */
export function study(batch: Batch, seed: number, loads: number, change: Partial<Truth> = {}): Studied {
  const random = seeded(seed);
  const truth = { ...drawnTruth(random, batch), ...change };
  const again = () => seeded(seed + 7919);
  const { rows } = work(batch, truth, again(), { loads });
  const learned = learn(batch, rows);
  const next = (planned?: LearnedDye["toUse"]) =>
    work(batch, truth, again(), { loads: loads + 10, before: loads, ...(planned && { planned }) });
  const [then, assumed] = [next(learned.toUse), next()];
  const askedOff = mean(then.askedOff.slice(loads));
  return {
    truth: {
      ...truth,
      timeFactor: learned.toUse.timeFactor * Math.exp(-askedOff),
    },
    learned,
    missLearned: mean(then.misses.slice(loads)),
    missAssumed: mean(assumed.misses.slice(loads)),
    failedLearned: failed(then.misses.slice(loads)),
    failedAssumed: failed(assumed.misses.slice(loads)),
    askedOff,
    dippedOff: mean(then.timesOff.slice(loads)),
    bestOff: mean(next(learned.estimates.best).askedOff.slice(loads)),
  };
}

/** How estimates of one figure do over some workshops. */
export interface Score {
  readonly name: Learnable;
  readonly within25: number;
  readonly told: number;
  /** Of the told ones: value ± 1.96 standard errors holds the truth. */
  readonly holds: number | null;
}

export const scores = (studied: readonly Pick<Studied, "truth" | "learned">[]): Score[] =>
  learnable.map((name) => {
    const all = studied.map(({ truth, learned }) => ({
      truth: truth[name],
      ...learned.estimates.figures[name],
    }));
    const told = all.filter((one) => one.told);
    return {
      name,
      within25: share(all.map(({ value, truth }) => Math.abs(value / truth - 1) <= 0.25)),
      told: told.length / all.length,
      holds:
        told.length === 0
          ? null
          : share(
              told.map(({ value, truth, standardError }) => Math.abs(value - truth) <= 1.96 * standardError),
            ),
    };
  });

/** Whether a second lot that moves the dyed colour so far is named, after ten loads of each. */
export function lotNamed(batch: Batch, seed: number, shift: Lab): boolean {
  const random = seeded(seed);
  const truth = drawnTruth(random, batch);
  const lots = [
    { from: 0, name: "a", shift: [0, 0, 0] as Lab },
    { from: 10, name: "b", shift },
  ];
  const { rows } = work(batch, truth, random, { loads: 20, lots });
  return lotShifts(lotReadings(learn(batch, rows).foreseen, ({ powderLot }) => powderLot))[0]!.named;
}

/** The batch with what is to be pasted. */
export function withLearned(batch: Batch, { toUse, estimates, teaches }: LearnedDye): Batch {
  if (!teaches) return batch;
  const { figures } = estimates;
  const old = batch.baths[0]!.dye;
  const dye = {
    ...old,
    ...(toUse.timeFactor === 1 ? {} : { timeFactor: toUse.timeFactor }),
    ...(figures.uptakePerDm2.told ? { uptakePerDm2: toUse.uptakePerDm2 } : {}),
    ...(toUse.strengthExponent === undefined ? {} : { strengthExponent: toUse.strengthExponent }),
    ...(figures.activationEnergyJPerMol.told
      ? { activationEnergyJPerMol: toUse.activationEnergyJPerMol }
      : {}),
  };
  const shades = batch.shades.map((shade) => ({ ...shade, dye }));
  return {
    ...batch,
    dyes: [dye],
    shades,
    baths: batch.baths.map((bath) => ({ ...bath, dye })),
    orders: batch.orders.map((order) => ({
      ...order,
      shade: shades.find(({ name }) => name === order.shade!.name)!,
    })),
  };
}

/** How often the times of the next ten loads are within a share of the right ones, in the mean. */
export const timesWithin = (
  studied: readonly Studied[],
  within: number,
  of: "askedOff" | "dippedOff" | "bestOff" = "askedOff",
): number => share(studied.map((one) => Math.abs(one[of]) <= Math.log1p(within)));
