import { done, failed, isError, type Outcome } from "../../fault.js";
import type { Batch, Bath, Shade } from "../../model/batch.js";
import { isDyed } from "../../model/undyed.js";
import { findAims } from "../../plan/assign/find-aims.js";
import type { SharedWork } from "../../plan/run/shared-work.js";
import type { WeekOrder } from "../week-model.js";
import { joinBaths } from "./join-baths.js";
import { placedInFile } from "./placed-in-file.js";

/** Several batches as one shop, and their orders. */
export interface Joined {
  /** All tanks, dyes, parts and baths; no orders. */
  readonly shop: Batch;
  readonly orders: readonly WeekOrder[];
  /** The day that a kept bath's age is of, where a log tells it. */
  readonly agedOn: ReadonlyMap<Bath, string>;
}

/** Things with a name, of all batches; the first of each name. */
function named<T extends { readonly name: string }>(lists: readonly (readonly T[])[]): Map<string, T> {
  const found = new Map<string, T>();
  for (const one of lists.flat()) if (!found.has(one.name)) found.set(one.name, one);
  return found;
}

/**
 * Joins batches that agree in what they share by name. A bath is the same where its tank and its dye are; it starts as
 * the first batch says that has it as a kept one. Paths of faults begin with the position of the batch.
 */
export function joinBatches(batches: readonly Batch[], shared: SharedWork): Outcome<Joined> {
  const [first] = batches as readonly [Batch, ...Batch[]];
  const tanks = named(batches.map((one) => one.tanks));
  const dyes = named(batches.map((one) => one.dyes));
  const parts = named(batches.map((one) => one.parts));
  const ofTheShop = (shade: Shade): Shade => ({ ...shade, dye: dyes.get(shade.dye.name)! });
  const shades = new Map(
    [...named(batches.map((one) => one.shades))].map(([name, shade]) => [name, ofTheShop(shade)]),
  );
  const { baths, agedOn, faults } = joinBaths(batches, (bath) => ({
    ...bath,
    tank: tanks.get(bath.tank.name)!,
    dye: dyes.get(bath.dye.name)!,
  }));
  const startAtMinute = batches.find((one) => one.startAtMinute !== undefined)?.startAtMinute;
  const orders = batches.flatMap((batch, file) =>
    batch.orders.map((order, i) => ({
      file,
      batch: batch.name,
      number: i + 1,
      order: {
        ...order,
        part: parts.get(order.part.name)!,
        ...(order.shade === undefined ? {} : { shade: shades.get(order.shade.name)! }),
      },
    })),
  );
  const shop: Batch = {
    ...first,
    ...(startAtMinute === undefined ? {} : { startAtMinute }),
    tanks: [...tanks.values()],
    dyes: [...dyes.values()],
    parts: [...parts.values()],
    shades: [...shades.values()],
    bases: [...named(batches.map((one) => one.bases)).values()],
    dryers: [...named(batches.map((one) => one.dryers)).values()],
    baths,
    orders: [],
    limits: {},
  };
  if (faults.some(isError)) return failed(...faults);
  const aimed = findAims(
    { ...shop, orders: orders.map(({ order }, index) => ({ ...order, index })) },
    shared,
  );
  const placed = aimed.faults.map((fault) => placedInFile(fault, { orders, baths }, batches));
  if (!aimed.ok) return failed(...placed);
  return done(
    {
      shop,
      agedOn,
      orders: orders.map((one, i) => ({
        ...one,
        depth: isDyed(one.order) ? aimed.value.aims[i]!.depth : 0,
      })),
    },
    [...faults, ...placed],
  );
}
