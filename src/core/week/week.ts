import { done, type Fault, type Outcome } from "../fault.js";
import type { Batch } from "../model/batch.js";
import { isDyed } from "../model/undyed.js";
import { ofAnyDay } from "../plan/assumptions/any-day.js";
import type { SharedWork } from "../plan/run/shared-work.js";
import { BathBook } from "./day/bath-book.js";
import { planDay } from "./day/plan-day.js";
import type { DaySetting } from "./day/try-day.js";
import { joinBatches } from "./join/join-batches.js";
import { bestSchedule } from "./order/best-schedule.js";
import { workingDays } from "./order/working-days.js";
import { orderRow } from "./results/order-row.js";
import { toOrder } from "./results/to-order.js";
import { weekBaths } from "./results/week-baths.js";
import { weekFaults } from "./results/week-faults.js";
import { weekLength } from "./results/week-length.js";
import type { DyedWeekOrder, Week, WeekDay, WeekOrder, WeekWish } from "./week-model.js";

/** Where no batch says when work starts [minutes after midnight]. Common practice, no source. */
const usualStart = 8 * 60;

const takesWork = (one: WeekOrder): one is DyedWeekOrder => isDyed(one.order);

/**
 * Puts the orders of several batches onto days, with one or two people; baths carry over from day to day. The batches
 * must agree in what they name alike, in room, handling and yield. Paths of faults begin with the position of the batch.
 */
export function planWeek(
  batches: readonly [Batch, ...Batch[]],
  wish: WeekWish,
  shared: SharedWork,
): Outcome<Week> {
  const joined = joinBatches(batches, shared);
  if (!joined.ok) return joined;
  const { orders } = joined.value;
  const startAtMinute = joined.value.shop.startAtMinute ?? usualStart;
  const shop: Batch = { ...joined.value.shop, startAtMinute };
  const setting: DaySetting = { shop, batches, people: wish.people, shared };
  const found = bestSchedule(
    setting,
    orders.filter(takesWork),
    wish,
    BathBook.of(shop.baths, wish.from, joined.value.agedOn),
  );
  if (!found.ok) return found;
  const faults: Fault[] = [...joined.faults];
  const days: WeekDay[] = [];
  for (const day of found.value.days) {
    const planned = planDay(setting, day);
    faults.push(...planned.faults);
    if (!planned.ok) return { ok: false, faults };
    days.push(planned.value);
  }
  const firstDate = workingDays(wish).next().value as string;
  const undyedOrders = orders.filter((one) => !takesWork(one));
  const week: Week = {
    wish,
    startAtMinute,
    startAssumed: joined.value.shop.startAtMinute === undefined,
    batches: batches.map(({ name }) => name),
    rule: found.value.rule.said,
    days,
    orders: orders.map((order) => orderRow(order, days, firstDate)),
    baths: found.value.days.flatMap((day, i) => weekBaths(setting, day, days[i]!)),
    toOrder: toOrder(shop, { days, undyedOrders, firstDate, weekdays: wish.weekdays }),
    length: weekLength(shop, days, wish),
    assumptions: ofAnyDay(days.flatMap(({ people }) => people.flatMap(({ plan }) => plan.assumptions))),
    cautions: days[0]?.people[0]?.plan.cautions ?? [],
  };
  return done(week, [...onceEach(faults), ...weekFaults(week, orders, batches, firstDate)]);
}

/** Each once, by what it says. */
const onceEach = (faults: readonly Fault[]): Fault[] => [
  ...new Map(faults.map((one) => [one.message, one])).values(),
];
