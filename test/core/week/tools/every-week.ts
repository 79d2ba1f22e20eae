import type { BathBook } from "../../../../src/core/week/day/bath-book.js";
import { type DaySetting, tryDay } from "../../../../src/core/week/day/try-day.js";
import { workingDays } from "../../../../src/core/week/order/working-days.js";
import { daysLate } from "../../../../src/core/week/results/order-row.js";
import type { DyedWeekOrder, WeekWish } from "../../../../src/core/week/week-model.js";

/** The least of all ways to give whole orders to days. */
export interface Least {
  /** Of all orders together. */
  readonly lateDays: number;
  /** Working minutes to the end, of those ways that are late on so few days. */
  readonly minutes: number;
}

/** The best of every way to give whole orders to up to so many days: fewest days late, then the earliest end. */
export function everyWeek(
  setting: DaySetting,
  orders: readonly DyedWeekOrder[],
  wish: WeekWish,
  first: BathBook,
  mostDays: number,
): Least {
  let least: Least = { lateDays: Number.POSITIVE_INFINITY, minutes: Number.POSITIVE_INFINITY };
  const dates: string[] = [];
  for (const date of workingDays(wish)) {
    if (dates.length === mostDays) break;
    dates.push(date);
  }
  const go = (left: readonly DyedWeekOrder[], at: number, book: BathBook, lateBefore: number): void => {
    const date = dates[at];
    if (date === undefined) return;
    for (let set = 1; set < 1 << left.length; set++) {
      const some = left.filter((_, i) => (set >> i) & 1);
      const pieces = some.map((order) => ({ order, quantity: order.order.quantity }));
      const tried = tryDay(setting, pieces, book, date);
      if (!tried.ok || tried.value.minutes > wish.dayMinutes) continue;
      const { shares, minutes: dayMinutes } = tried.value;
      const lateDays = lateBefore + some.reduce((sum, order) => sum + daysLate(order, date), 0);
      const rest = left.filter((one) => !some.includes(one));
      if (rest.length > 0) {
        const runs = shares.flatMap((share) => share.runs);
        go(rest, at + 1, book.after(runs, date), lateDays);
        continue;
      }
      const minutes = at * wish.dayMinutes + dayMinutes;
      if (lateDays < least.lateDays || (lateDays === least.lateDays && minutes < least.minutes))
        least = { lateDays, minutes };
    }
  };
  go(orders, 0, first, 0);
  return least;
}
