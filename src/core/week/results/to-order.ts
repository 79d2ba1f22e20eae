import { mapped } from "../../mapped.js";
import type { Batch, Dye, Part } from "../../model/batch.js";
import { daysLater, weekdayOf } from "../../quantity/days.js";
import { figureOfDye } from "../../quantity/dye/dye-figures.js";
import { dyeKinds } from "../../quantity/dye/dye-kinds.js";
import type { ToOrder, WeekDay, WeekOrder } from "../week-model.js";

/** What is used on a day. */
interface Use {
  readonly date: string;
  readonly amount: number;
}

/** The days of a week, and what is sold undyed on the first. */
interface Using {
  readonly days: readonly WeekDay[];
  readonly undyedOrders: readonly WeekOrder[];
  readonly firstDate: string;
  /** Of the days on which orders are placed, 1 for Monday. */
  readonly weekdays: readonly number[];
}

/** Dyes poured and undyed parts started, beside what is on the shelf. */
export function toOrder({ dyes }: Batch, using: Using): ToOrder[] {
  const ordered = (uses: readonly Use[], of: Item, shelf: Shelf): ToOrder =>
    orderedBy(uses, of, shelf, using.weekdays);
  return [
    ...dyes
      .filter(({ mix }) => mix === undefined)
      .map((dye) =>
        ordered(
          dyeUses(dye, using.days),
          { kind: "dye", name: dye.name, base: null, unit: dyeKinds[dye.dilution.kind].unit },
          dye,
        ),
      ),
    ...blankUses(using).map(({ part, base, uses }) =>
      ordered(
        uses,
        { kind: "blank", name: part.name, base, unit: "parts" },
        { stock: blankStock(part, base), leadTimeDays: part.leadTimeDays },
      ),
    ),
  ].filter(({ used }) => used > 0);
}

type Item = Pick<ToOrder, "kind" | "name" | "base" | "unit">;

/** What is there, and how long more takes to come. */
interface Shelf {
  readonly stock?: number | undefined;
  readonly leadTimeDays?: number | undefined;
}

/** The day itself where it is one of the week's, or the last one before it. */
function workedOn(date: string, weekdays: readonly number[]): string {
  let day = date;
  while (!weekdays.includes(weekdayOf(day))) day = daysLater(day, -1);
  return day;
}

const blankStock = ({ stock }: Part, base: string | null): number | undefined =>
  typeof stock === "object" ? (base === null ? undefined : stock.get(base)) : stock;

function orderedBy(
  uses: readonly Use[],
  of: Item,
  { stock, leadTimeDays }: Shelf,
  weekdays: readonly number[],
): ToOrder {
  let used = 0;
  let shortFrom: string | null = null;
  for (const { date, amount } of uses) {
    used += amount;
    if (stock !== undefined && used > stock * (1 + 1e-9)) shortFrom ??= date;
  }
  return {
    ...of,
    used,
    stock: stock ?? null,
    short: stock === undefined ? 0 : Math.max(0, used - stock),
    shortFrom,
    leadTimeDays: leadTimeDays ?? null,
    orderBy:
      shortFrom === null || leadTimeDays === undefined
        ? null
        : workedOn(daysLater(shortFrom, -Math.ceil(leadTimeDays)), weekdays),
  };
}

/** Dye of fresh baths and top-ups, alone or in a mix, by day. */
const dyeUses = (dye: Dye, days: readonly WeekDay[]): Use[] =>
  days.map(({ date, people }) => ({
    date,
    amount: people
      .flatMap(({ plan }) => plan.baths)
      .flatMap(({ start, dye: name, dyeBalance }) => {
        const own = name === dye.name ? dyeBalance : dyeBalance.mix?.find((one) => one.dye === dye.name);
        if (own === undefined) return [];
        return (start.kind === "fresh" ? figureOfDye(own, "start") : 0) + figureOfDye(own, "added");
      })
      .reduce((sum, amount) => sum + amount, 0),
  }));

/** Undyed parts taken from the shelf, by part and base. */
function blankUses({
  days,
  undyedOrders,
  firstDate,
}: Using): { readonly part: Part; readonly base: string | null; readonly uses: readonly Use[] }[] {
  const found = new Map<
    string,
    { readonly part: Part; readonly base: string | null; readonly uses: Use[] }
  >();
  const use = ({ part, base: on }: WeekOrder["order"], date: string, amount: number): void => {
    // One count is for all bases together.
    const base = typeof part.stock === "number" ? null : (on?.name ?? null);
    const key = JSON.stringify([part.name, base]);
    const one = found.get(key) ?? { part, base, uses: [] };
    one.uses.push({ date, amount });
    found.set(key, one);
  };
  for (const { order } of undyedOrders) use(order, firstDate, order.quantity);
  for (const { date, people } of days)
    for (const { plan, pieces } of people)
      mapped(pieces, ({ order }, i) => use(order.order, date, plan.orders[i]!.started));
  return [...found.values()];
}
