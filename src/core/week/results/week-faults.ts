import { type Fault, warning } from "../../fault.js";
import type { Batch } from "../../model/batch.js";
import { undyed } from "../../model/undyed.js";
import { counted } from "../../quantity/text/counted.js";
import type { Week, WeekOrder, WeekWish } from "../week-model.js";

/** What can bring a late order to its date. */
function lateHelp(due: string | null, firstDate: string, { people }: WeekWish): string {
  if (due !== null && due < firstDate)
    return `the first day of work is ${firstDate}: give the order a later date`;
  return people === 1
    ? "more hours, a second person or a later date would help"
    : "more hours or a later date would help";
}

/** Orders that are ready after they are due, and what should have been ordered before the week begins. */
export function weekFaults(
  { orders: rows, toOrder, wish }: Week,
  orders: readonly WeekOrder[],
  batches: readonly Batch[],
  firstDate: string,
): Fault[] {
  const late = rows.flatMap(({ lateDays, readyDate, due, part, shade }, i) => {
    const { file, number } = orders[i]!;
    return lateDays === 0
      ? []
      : [
          warning(
            "order-late",
            [file, "orders", number - 1, "due"],
            `${shade === undyed ? `undyed ${part}` : `${part} in ${shade}`} is ready on ${readyDate}, ${counted(lateDays, "day")} after it is due on ${due}`,
            lateHelp(due, firstDate, wish),
          ),
        ];
  });
  const material = toOrder.flatMap(({ kind, name, shortFrom, orderBy, leadTimeDays }) => {
    if (orderBy === null || orderBy >= wish.from) return [];
    const list = kind === "dye" ? "dyes" : "parts";
    const file = batches.findIndex((batch) => batch[list].some((one) => one.name === name));
    return [
      warning(
        "order-by-passed",
        [file, list, name, "leadTime"],
        `${kind === "dye" ? `dye "${name}"` : `undyed "${name}"`} is short on ${shortFrom} and takes ${leadTimeDays} d to arrive: the last day to order it was ${orderBy}`,
        "order it now; what needs it may have to wait for it",
      ),
    ];
  });
  return [...late, ...material];
}
