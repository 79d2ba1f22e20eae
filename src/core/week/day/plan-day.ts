import { done, type Fault, isError, type Outcome } from "../../fault.js";
import { planBatch } from "../../plan/plan.js";
import { placedInFile } from "../join/placed-in-file.js";
import type { ScheduledDay } from "../order/schedule.js";
import type { PersonDay, WeekDay } from "../week-model.js";
import type { DaySetting } from "./try-day.js";

/** What the week itself says of stock, and what is about costs only. */
const notOfTheDay: ReadonlySet<string> = new Set(["stock-short", "idle-bath", "unknown-repeat"]);

/** The run sheets of a day: what `plan` says of the batch of each person. */
export function planDay(
  { batches, shared }: DaySetting,
  { date, minutes, shares }: ScheduledDay,
): Outcome<WeekDay> {
  const people: PersonDay[] = [];
  const faults: Fault[] = [];
  for (const { batch, pieces } of shares) {
    const plan = planBatch(batch, shared);
    const day = { orders: pieces.map(({ order }) => order), baths: batch.baths };
    faults.push(
      ...plan.faults
        .filter((fault) => isError(fault) || !notOfTheDay.has(fault.code))
        .map((fault) => placedInFile(fault, day, batches)),
    );
    if (!plan.ok) return { ok: false, faults };
    people.push({ plan: plan.value, pieces });
  }
  return done({ date, minutes, people }, faults);
}
