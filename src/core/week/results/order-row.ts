import { undyed } from "../../model/undyed.js";
import { daysBetween } from "../../quantity/days.js";
import type { WeekDay, WeekOrder, WeekOrderRow } from "../week-model.js";
import { readyMinutes } from "./ready.js";

/** Days from the due date of an order to a day; 0 before it, and where there is none. */
export const daysLate = ({ order }: WeekOrder, date: string): number =>
  order.due === undefined ? 0 : Math.max(0, daysBetween(order.due, date));

/** When an order is ready. Undyed parts are ready when the first day begins. */
export function orderRow(order: WeekOrder, days: readonly WeekDay[], firstDate: string): WeekOrderRow {
  const { part, shade, base, quantity, due } = order.order;
  const worked = days.flatMap(({ date, people }) =>
    people.flatMap(({ plan, pieces }) =>
      pieces.flatMap((piece, i) =>
        piece.order === order
          ? [{ date, quantity: piece.quantity, minute: readyMinutes(plan).get(i + 1)! }]
          : [],
      ),
    ),
  );
  const on = worked.length > 0 ? worked : [{ date: firstDate, quantity, minute: 0 }];
  const last = on.at(-1)!;
  return {
    batch: order.batch,
    order: order.number,
    part: part.name,
    shade: shade?.name ?? undyed,
    base: base?.name ?? null,
    quantity,
    due: due ?? null,
    readyDate: last.date,
    readyMinute: last.minute,
    lateDays: daysLate(order, last.date),
    days: on.map((one) => ({ date: one.date, quantity: one.quantity })),
  };
}
