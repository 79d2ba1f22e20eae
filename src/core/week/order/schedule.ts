import { done, error, type Fault, failed, type Outcome } from "../../fault.js";
import type { BathBook } from "../day/bath-book.js";
import type { DaySetting, TriedDay } from "../day/try-day.js";
import type { DyedWeekOrder, Piece, WeekOrder, WeekWish } from "../week-model.js";
import { fillDay } from "./fill-day.js";
import type { Rule } from "./rules.js";
import { workingDays } from "./working-days.js";

/** A day of a schedule, with the baths as they were that morning. */
export interface ScheduledDay extends TriedDay {
  readonly date: string;
  readonly book: BathBook;
}

/** Working days beyond which orders are refused: over a quarter of a year can only be a slip of a quantity. Common practice, no source. */
const mostDays = 65;

/** Puts orders onto days by a rule: each day takes what fits, in the order of the rule. */
export function schedule(
  setting: DaySetting,
  orders: readonly DyedWeekOrder[],
  wish: WeekWish,
  first: BathBook,
  rule: Rule,
): Outcome<readonly ScheduledDay[]> {
  const days: ScheduledDay[] = [];
  let left: readonly Piece[] = orders.map((order) => ({ order, quantity: order.order.quantity }));
  let book = first;
  for (const date of workingDays(wish)) {
    if (left.length === 0) break;
    if (days.length === mostDays) return failed(tooMuch(left[0]!.order));
    const filled = fillDay(setting, { ...wish, book, date, rule }, left);
    if (!filled.ok) return filled;
    const { day } = filled.value;
    days.push({ ...day, date, book });
    left = filled.value.left;
    book = book.after(
      day.shares.flatMap(({ runs }) => runs),
      date,
    );
  }
  return done(days);
}

const tooMuch = ({ file, number }: WeekOrder): Fault =>
  error(
    "too-many-days",
    [file, "orders", number - 1, "quantity"],
    `the orders would take more than ${mostDays} working days`,
    "check the quantities, and the hours of a day",
  );
