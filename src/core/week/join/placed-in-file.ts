import type { Fault } from "../../fault.js";
import type { Batch, Bath } from "../../model/batch.js";
import type { WeekOrder } from "../week-model.js";
import { isSameBath } from "./same-bath.js";

const named = ["tanks", "dryers", "bases", "dyes", "parts", "shades"] as const;
const isNamed = (kind: unknown): kind is (typeof named)[number] => named.includes(kind as "tanks");

/** A fault of a day's batch at its place in the batch that it comes from: the path begins with that one's position. */
export function placedInFile(
  fault: Fault,
  day: { readonly orders: readonly Pick<WeekOrder, "file" | "number">[]; readonly baths: readonly Bath[] },
  batches: readonly Batch[],
): Fault {
  const [kind, which, ...rest] = fault.path;
  if (kind === "orders") {
    const { file, number } = day.orders[which as number]!;
    return { ...fault, path: [file, "orders", number - 1, ...rest] };
  }
  if (kind === "baths") {
    const of = day.baths[which as number]!;
    const same = (bath: Bath): boolean => isSameBath(bath, of);
    const file = batches.findIndex(({ baths }) => baths.some(same));
    return { ...fault, path: [file, "baths", batches[file]!.baths.findIndex(same), ...rest] };
  }
  const file = batches.findIndex((batch) => isNamed(kind) && batch[kind].some(({ name }) => name === which));
  return { ...fault, path: [Math.max(0, file), ...fault.path] };
}
