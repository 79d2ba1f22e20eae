import type { Assumption } from "../model/assumption.js";
import type { DyedOrder, Order } from "../model/batch.js";
import type { Caution } from "../plan/advice/cautions.js";
import type { Plan, PlanStart } from "../plan/plan-model.js";

/** What a week has. */
export interface WeekWish {
  readonly people: 1 | 2;
  /** First day, ISO 8601. */
  readonly from: string;
  /** Days of the week that are worked, 1 for Monday to 7 for Sunday. */
  readonly weekdays: readonly number[];
  /** From the start of a day's work to its end. */
  readonly dayMinutes: number;
  /** Nobody said how long a day is. */
  readonly dayAssumed: boolean;
}

/** An order of one of the batches. */
export interface WeekOrder {
  /** Position of its batch. */
  readonly file: number;
  readonly batch: string;
  /** From 1, in its batch. */
  readonly number: number;
  readonly order: Order;
  /** Of its shade; 0 where it is not dyed. */
  readonly depth: number;
}

/** An order that takes work. */
export interface DyedWeekOrder extends WeekOrder {
  readonly order: DyedOrder;
}

/** Good parts of an order that are made on one day. */
export interface Piece {
  readonly order: DyedWeekOrder;
  readonly quantity: number;
}

/** What one person does in a day: a plan of its own, over tanks of its own. */
export interface PersonDay {
  readonly plan: Plan;
  readonly pieces: readonly Piece[];
}

/** One working day. */
export interface WeekDay {
  /** ISO 8601. */
  readonly date: string;
  /** Until all tanks are clean and all parts dry. */
  readonly minutes: number;
  readonly people: readonly PersonDay[];
}

/** When an order is ready, good parts of it by day. */
export interface WeekOrderRow {
  readonly batch: string;
  readonly order: number;
  readonly part: string;
  readonly shade: string;
  readonly base: string | null;
  readonly quantity: number;
  readonly due: string | null;
  readonly readyDate: string;
  /** From the start of that day's work. */
  readonly readyMinute: number;
  /** Days after the due date; 0 where it is in time or has none. */
  readonly lateDays: number;
  readonly days: readonly { readonly date: string; readonly quantity: number }[];
}

/** A bath on one day: as it starts, and as it is poured back. */
export interface WeekBath {
  readonly date: string;
  readonly tank: string;
  readonly dye: string;
  readonly start: PlanStart;
  /** Made up anew because the bath before it was past its shelf life. */
  readonly renewed: boolean;
  readonly strengthAfter: number | null;
  readonly volumeAfterL: number | null;
  /** The value of `start:` in a batch file of the same day; null where the bath is dumped. */
  readonly startAfter: string | null;
}

/** A dye or an undyed part: what the week uses of it, and by when more must be ordered. */
export interface ToOrder {
  readonly kind: "dye" | "blank";
  readonly name: string;
  /** Of an undyed part. */
  readonly base: string | null;
  readonly unit: "mL" | "g" | "parts";
  readonly used: number;
  /** Null where it is not given. */
  readonly stock: number | null;
  /** What the week uses beyond it; 0 where the stock is not given. */
  readonly short: number;
  /** The first day that lacks some. */
  readonly shortFrom: string | null;
  readonly leadTimeDays: number | null;
  /** The last day on which to order; null where nothing is short or the lead time is not given. */
  readonly orderBy: string | null;
}

/** How long the week takes beside what the same loads take at least. */
export interface WeekLength {
  /** Working minutes from the first start to the last end, each day as long as it may be but the last. */
  readonly minutes: number;
  /** With each bath set up once, whoever waits for nothing: no order of work takes less. */
  readonly leastMinutes: number;
  /** What sets that least: hands, a tank or the dryers. */
  readonly boundBy: string;
}

/** Batches put onto days. Numbers are unrounded. */
export interface Week {
  readonly wish: WeekWish;
  readonly startAtMinute: number;
  readonly startAssumed: boolean;
  readonly batches: readonly string[];
  /** The rule by which the orders were taken. */
  readonly rule: string;
  readonly days: readonly WeekDay[];
  readonly orders: readonly WeekOrderRow[];
  readonly baths: readonly WeekBath[];
  readonly toOrder: readonly ToOrder[];
  readonly length: WeekLength;
  readonly assumptions: readonly Assumption[];
  readonly cautions: readonly Caution[];
}
