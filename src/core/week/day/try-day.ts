import { done, type Fault, failed, isError, type Outcome } from "../../fault.js";
import { largest } from "../../maths/extent.js";
import type { Batch, Dryer } from "../../model/batch.js";
import type { BathRun } from "../../plan/run/bath-run.js";
import type { SharedWork } from "../../plan/run/shared-work.js";
import { workDay } from "../../plan/run/work-batch.js";
import { placedInFile } from "../join/placed-in-file.js";
import type { Piece } from "../week-model.js";
import type { BathBook } from "./bath-book.js";
import { tankGroups } from "./tank-groups.js";

/** What is the same for every day that is tried. */
export interface DaySetting {
  readonly shop: Batch;
  /** Those that the shop is joined from. */
  readonly batches: readonly Batch[];
  readonly people: 1 | 2;
  readonly shared: SharedWork;
}

/** One person's work: a batch that `plan` would work in the same time. */
export interface Share {
  readonly batch: Batch;
  readonly pieces: readonly Piece[];
  readonly minutes: number;
  readonly runs: readonly BathRun[];
}

/** A day with some pieces on it. */
export interface TriedDay {
  readonly shares: readonly Share[];
  readonly minutes: number;
}

const inFileOrder = (a: Piece, b: Piece): number =>
  a.order.file - b.order.file || a.order.number - b.order.number;

/** The batch of a day's pieces, baths as they are that day. */
function dayBatch(
  shop: Batch,
  pieces: readonly Piece[],
  book: BathBook,
  date: string,
  dryers: readonly Dryer[] = shop.dryers,
): Batch {
  const sorted = [...pieces].sort(inFileOrder);
  const dyes = new Set(sorted.map(({ order }) => order.order.shade.dye));
  const baths = shop.baths.filter(({ dye }) => dyes.has(dye));
  return {
    ...shop,
    name: [...new Set(sorted.map(({ order }) => order.batch))].join(", "),
    date,
    dryers,
    baths: baths.map((bath, index) => ({ ...book.today(bath, date).bath, index })),
    orders: sorted.map(({ order, quantity }, index) => ({ ...order.order, index, quantity })),
  };
}

/** Works one share. */
function workShare({ shared, batches }: DaySetting, pieces: readonly Piece[], batch: Batch): Outcome<Share> {
  const sorted = [...pieces].sort(inFileOrder);
  const worked = workDay(batch, shared);
  const faults: readonly Fault[] = worked.ok
    ? worked.value.runs.flatMap((run) => run.faults).filter(isError)
    : worked.faults;
  if (!worked.ok || faults.length > 0) {
    const day = { orders: sorted.map(({ order }) => order), baths: batch.baths };
    return failed(...faults.map((fault) => placedInFile(fault, day, batches)));
  }
  const { day, runs } = worked.value;
  return done({ batch, pieces: sorted, minutes: day.minutes, runs });
}

/**
 * Works a day with these pieces on it. Two people share the tanks: tanks that hold one dye stay together, and each
 * group, the longest first, goes to whoever has less to do. Each has a dryer, or half of the places of the only one; where
 * that takes longer than one person alone, one works alone.
 */
export function tryDay(
  setting: DaySetting,
  pieces: readonly Piece[],
  book: BathBook,
  date: string,
): Outcome<TriedDay> {
  const { shop, people } = setting;
  const whole = workShare(setting, pieces, dayBatch(shop, pieces, book, date));
  if (!whole.ok) return whole;
  const alone: TriedDay = { shares: [whole.value], minutes: whole.value.minutes };
  const groups = people === 1 ? [] : tankGroups(shop, pieces);
  if (groups.length < 2) return done(alone);
  const dryersOf = (person: number): readonly Dryer[] => {
    const [first, second] = shop.dryers;
    if (second !== undefined) return [person === 0 ? first! : second];
    return first === undefined ? [] : [{ ...first, capacity: Math.max(1, Math.floor(first.capacity / 2)) }];
  };
  const work = (some: readonly Piece[], person: number): Outcome<Share> =>
    workShare(setting, some, dayBatch(shop, some, book, date, dryersOf(person)));
  const each: Share[] = [];
  for (const group of groups) {
    const worked = work(group, 0);
    if (!worked.ok) return worked;
    each.push(worked.value);
  }
  each.sort((a, b) => b.minutes - a.minutes);
  const hands: [Share[], Share[]] = [[], []];
  const load = (some: readonly Share[]): number => some.reduce((sum, { minutes }) => sum + minutes, 0);
  for (const one of each) hands[load(hands[1]) < load(hands[0]) ? 1 : 0].push(one);
  const shares: Share[] = [];
  for (const [person, some] of hands.entries()) {
    const worked = work(
      some.flatMap((one) => one.pieces),
      person,
    );
    if (!worked.ok) return worked;
    shares.push(worked.value);
  }
  const minutes = largest(shares.map((share) => share.minutes));
  return done(minutes < alone.minutes ? { shares, minutes } : alone);
}
