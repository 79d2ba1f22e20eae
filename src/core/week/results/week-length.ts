import { exactSumOf } from "../../maths/exact-sum.js";
import { largest, smallest } from "../../maths/extent.js";
import type { Batch } from "../../model/batch.js";
import type { TimelineEntry, TimelineTask } from "../../plan/day/timeline.js";
import type { WeekDay, WeekLength, WeekWish } from "../week-model.js";

const minutesOf = ({ startMinute, endMinute }: TimelineEntry): number => endMinute - startMinute;

/** Tasks that do not grow with the loads of a bath: those done once a bath and day, the dryer, and time to spare. */
const notAtTheBath: ReadonlySet<TimelineTask> = new Set([
  "set up",
  "heat",
  "cool",
  "clean up",
  "dryer loading",
  "dry",
  "dryer emptying",
  "wait",
]);

/** Whoever works at baths, one load at a time: a person, or a tank. */
interface Lane {
  readonly called: string;
  /** Minutes of all loads, shared out evenly where several people have them. */
  readonly minutes: number;
  /** Dyes that it holds one after the other. */
  readonly dyes: number;
}

/** What no day can do without [minutes]. */
interface DayFrame {
  readonly dayMinutes: number;
  /** Until the first load goes in: set-up and the shortest heating of the week. */
  readonly before: number;
  /** After the last load: it cools and is cleaned, or the parts dry, whichever is longer. */
  readonly after: number;
  /** From one dye to another in one tank. */
  readonly change: number;
}

/** When a lane can be done at the earliest: as few days as hold its loads, each but the last as long as it may be. */
function earliestEnd({ minutes, dyes }: Lane, { dayMinutes, before, after, change }: DayFrame): number {
  const window = dayMinutes - before - after;
  if (window <= 0) return minutes;
  for (let days = 1; ; days++) {
    // A dye that has no day of its own costs a change.
    const work = minutes + Math.max(0, dyes - days) * change;
    if (work <= days * window * (1 + 1e-9))
      return (days - 1) * dayMinutes + before + Math.max(0, work - (days - 1) * window) + after;
  }
}

/** When the dryers can be done at the earliest, run after run, the first when a load is out of its bath. */
function earliestDry(
  dryers: Batch["dryers"],
  {
    parts,
    people,
    loadingMinutes,
  }: { readonly parts: number; readonly people: number; readonly loadingMinutes: number },
  { dayMinutes, before }: DayFrame,
): number {
  const used = Math.min(people, dryers.length);
  const runMinutes = loadingMinutes + smallest(dryers.map(({ minutes }) => minutes));
  const runs = Math.ceil(parts / (used * largest(dryers.map(({ capacity }) => capacity))));
  const runsADay = Math.floor(((dayMinutes - before) / runMinutes) * (1 + 1e-9));
  if (runsADay < 1) return runs * runMinutes;
  const days = Math.max(1, Math.ceil(runs / runsADay));
  return (days - 1) * dayMinutes + before + (runs - (days - 1) * runsADay) * runMinutes;
}

/**
 * How long the week takes, and the least that its loads take in any order of work, as long as each load takes the time
 * that it took: a bound on both, by people and by tanks, that no schedule beats and that none may reach.
 */
export function weekLength(
  { handling, dryers }: Pick<Batch, "handling" | "dryers">,
  days: readonly WeekDay[],
  { people, dayMinutes }: Pick<WeekWish, "people" | "dayMinutes">,
): WeekLength {
  const plans = days.flatMap((day) => day.people.map(({ plan }) => plan));
  const entries = plans.flatMap(({ timeline }) => timeline);
  const shortest = (what: TimelineTask): number =>
    smallest(
      plans.flatMap(({ baths, timeline }) =>
        baths.map(({ bath }) =>
          exactSumOf(
            timeline.filter((entry) => entry.bath === bath && entry.what === what),
            minutesOf,
          ),
        ),
      ),
    );
  const [heat, cool] = [shortest("heat"), shortest("cool")];
  const before = handling.setUpMinutes + heat;
  const cleaned = cool + handling.cleanUpMinutes;
  const dried =
    dryers.length === 0 ? 0 : handling.dryerLoadingMinutes + smallest(dryers.map((one) => one.minutes));
  const frame = { dayMinutes, before, after: Math.max(cleaned, dried), change: cleaned + before };
  const atBaths = entries.filter(({ what }) => !notAtTheBath.has(what));
  const tanks = [...new Set(atBaths.flatMap(({ tank }) => (tank === undefined ? [] : [tank])))];
  const lanes: Lane[] = [
    {
      called: people === 1 ? "one pair of hands" : "two pairs of hands",
      minutes: exactSumOf(atBaths, minutesOf) / people,
      dyes: 1,
    },
    ...tanks.map((tank) => ({
      called: `tank ${tank}`,
      minutes: exactSumOf(
        atBaths.filter((entry) => entry.tank === tank),
        minutesOf,
      ),
      dyes: new Set(
        plans.flatMap(({ baths }) => baths.flatMap((one) => (one.tank === tank ? [one.dye] : []))),
      ).size,
    })),
  ];
  const parts = exactSumOf(atBaths, ({ parts = 0 }) => parts);
  const ends = [
    ...lanes.map((lane) => ({ boundBy: lane.called, leastMinutes: earliestEnd(lane, frame) })),
    ...(dryers.length === 0
      ? []
      : [
          {
            boundBy: dryers.length === 1 ? "the dryer" : "the dryers",
            leastMinutes: earliestDry(
              dryers,
              { parts, people, loadingMinutes: handling.dryerLoadingMinutes },
              frame,
            ),
          },
        ]),
  ];
  return {
    minutes: days.length === 0 ? 0 : (days.length - 1) * dayMinutes + days.at(-1)!.minutes,
    ...ends.reduce((most, one) => (one.leastMinutes > most.leastMinutes ? one : most)),
  };
}
