import { startText } from "../../plan/results/carry-over.js";
import type { DaySetting } from "../day/try-day.js";
import type { ScheduledDay } from "../order/schedule.js";
import type { WeekBath, WeekDay } from "../week-model.js";

/** Every bath of a day as it starts, and as it is poured back. */
export const weekBaths = ({ shop }: DaySetting, { book, date }: ScheduledDay, day: WeekDay): WeekBath[] =>
  day.people
    .flatMap(({ plan }) => plan.baths)
    .map(({ tank, dye, start, carryOver }) => ({
      date,
      tank,
      dye,
      start,
      renewed: book.today(shop.baths.find((one) => one.tank.name === tank && one.dye.name === dye)!, date)
        .renewed,
      strengthAfter: carryOver?.strength ?? null,
      volumeAfterL: carryOver?.volumeL ?? null,
      startAfter: carryOver === null ? null : startText(carryOver),
    }));
