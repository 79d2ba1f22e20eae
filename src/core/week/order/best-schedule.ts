import { done, type Outcome } from "../../fault.js";
import type { BathBook } from "../day/bath-book.js";
import type { DaySetting } from "../day/try-day.js";
import { daysLate } from "../results/order-row.js";
import type { DyedWeekOrder, WeekOrder, WeekWish } from "../week-model.js";
import { type Rule, rules } from "./rules.js";
import { type ScheduledDay, schedule } from "./schedule.js";

/** Days, and the rule that filled them. */
interface RuledSchedule {
  readonly days: readonly ScheduledDay[];
  readonly rule: Rule;
}

/** The schedule of the rule by which orders are late on the fewest days; of several, that which ends first. */
export function bestSchedule(
  setting: DaySetting,
  orders: readonly DyedWeekOrder[],
  wish: WeekWish,
  book: BathBook,
): Outcome<RuledSchedule> {
  let best: RuledSchedule | undefined;
  // Two people share a dryer, so that one alone may end a day sooner.
  for (const people of setting.people === 2 ? ([2, 1] as const) : ([1] as const))
    for (const rule of rules) {
      const tried = schedule({ ...setting, people }, orders, wish, book, rule);
      if (!tried.ok) return tried;
      if (best === undefined || isBetter(tried.value, best.days)) best = { days: tried.value, rule };
    }
  return done(best!);
}

/** Days late of all orders, by the last day on which each is worked. */
function lateOf(days: readonly ScheduledDay[]): number {
  const last = new Map<WeekOrder, string>();
  for (const { shares, date } of days)
    for (const { order } of shares.flatMap(({ pieces }) => pieces)) last.set(order, date);
  return [...last].reduce((sum, [order, date]) => sum + daysLate(order, date), 0);
}

/** Set-ups, each with its clean-up. */
const setUpsOf = (days: readonly ScheduledDay[]): number =>
  days.reduce((sum, { shares }) => sum + shares.reduce((all, { runs }) => all + runs.length, 0), 0);

/** What schedules are judged by, one after the other. */
const judgedBy: readonly ((days: readonly ScheduledDay[]) => number)[] = [
  lateOf,
  (days) => days.length,
  setUpsOf,
  (days) => days.at(-1)?.minutes ?? 0,
];

function isBetter(a: readonly ScheduledDay[], b: readonly ScheduledDay[]): boolean {
  for (const value of judgedBy) {
    const difference = value(a) - value(b);
    if (Math.abs(difference) > 1e-9) return difference < 0;
  }
  return false;
}
