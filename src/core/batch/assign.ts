import { partsAgain, yieldWithRework } from "../cost/rework.js";
import { error, type Fault } from "../fault.js";
import { mapped } from "../mapped.js";
import { checkedLoadSize, type LoadLimit, nextLoad, partsToStart } from "./loads.js";
import type { Batch, Bath, Order } from "./model.js";

/** Parts of one order that go into one bath together. */
export interface LoadPlan {
  readonly order: Order;
  readonly parts: number;
  readonly areaDm2: number;
  readonly depth: number;
  /** The least depth within the shade's tolerance, where its colour is known. */
  readonly leastDepth: number | undefined;
  readonly boundBy: LoadLimit;
}

/** Every bath's loads in the order of work, and parts started per order (by `order.index`). */
export interface Assignment {
  readonly loads: ReadonlyMap<Bath, readonly LoadPlan[]>;
  readonly started: readonly number[];
  readonly faults: readonly Fault[];
}

/** Loads of one order beyond which a plan is refused: it would be years of work. */
const mostLoads = 20_000;

/**
 * Spreads the orders over the baths: lighter shades first, then the order of the file; where two tanks
 * hold one dye, each load goes to the one with the smaller dyed area per litre so far. Parts that a second dip is
 * to save are among the loads twice.
 */
export function assignLoads(
  batch: Batch,
  aimOf: (order: Order) => { readonly depth: number; readonly leastDepth?: number | undefined },
): Assignment {
  const depthOf = (order: Order): number => aimOf(order).depth;
  const loads = new Map<Bath, LoadPlan[]>(mapped(batch.baths, (bath) => [bath, []]));
  const dyed = new Map<Bath, number>(
    mapped(batch.baths, (bath) => [bath, bath.start.kind === "kept" ? bath.start.areaDm2 : 0]),
  );
  const shares = { firstPass: batch.yield, rework: batch.rework ?? 0, secondPass: 1 };
  const started = mapped(batch.orders, (order) => partsToStart(order.quantity, yieldWithRework(shares)));
  const faults: Fault[] = [];
  const sorted = [...batch.orders].sort((a, b) => depthOf(a) - depthOf(b) || a.index - b.index);
  for (const order of sorted) {
    const sizes = mapped(
      batch.baths.filter((bath) => bath.dye === order.shade.dye),
      (bath) => ({ bath, size: checkedLoadSize(order.part, bath.tank, batch.handling) }),
    );
    const fitting = sizes.flatMap(({ bath, size }) => (size.ok ? [{ bath, size: size.value }] : []));
    if (fitting.length === 0) {
      faults.push(...(sizes.find(({ size }) => !size.ok)?.size.faults ?? []));
      continue;
    }
    // A part that is dyed again is dipped like any other.
    let left = started[order.index]! + partsAgain(started[order.index]!, shares);
    const fewest = left / fitting.reduce((most, { size }) => Math.max(most, size.parts), 0);
    if (fewest > mostLoads) {
      faults.push(
        error(
          "too-many-loads",
          ["orders", order.index, "quantity"],
          `${left} parts of "${order.part.name}" would take ${Math.ceil(fewest)} loads, more than the ${mostLoads} that one plan goes through`,
          "check the quantity and the yield, or split the order over several batches",
        ),
      );
      continue;
    }
    while (left > 0) {
      const load = (bath: Bath): number => (dyed.get(bath) ?? 0) / bath.tank.volumeL;
      const { bath, size } = fitting.reduce((least, next) =>
        load(next.bath) < load(least.bath) ? next : least,
      );
      const parts = nextLoad(left, size.parts);
      const areaDm2 = parts * order.part.areaDm2;
      const { depth, leastDepth } = aimOf(order);
      loads.get(bath)!.push({ order, parts, areaDm2, depth, leastDepth, boundBy: size.boundBy });
      dyed.set(bath, (dyed.get(bath) ?? 0) + areaDm2);
      left -= parts;
    }
  }
  return { loads, started, faults };
}
