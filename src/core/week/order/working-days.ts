import { daysLater, weekdayOf } from "../../quantity/days.js";
import type { WeekWish } from "../week-model.js";

/** The days that are worked, without end. */
export function* workingDays({ from, weekdays }: Pick<WeekWish, "from" | "weekdays">): Generator<string> {
  for (let date = from; ; date = daysLater(date, 1)) if (weekdays.includes(weekdayOf(date))) yield date;
}
