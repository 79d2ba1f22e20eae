import { checkedLoadSize, type LoadSize, nextLoad, partsToStart } from "../../bath/load/load-size.js";
import type { LoadWork } from "../../bath/load/load-work.js";
import { toKeepLevel, topUpRecords } from "../../bath/load/top-up-rules.js";
import { partsAgain, yieldWithRework } from "../../cost/rework.js";
import { error, type Fault } from "../../fault.js";
import { mapped } from "../../mapped.js";
import { largest } from "../../maths/extent.js";
import type { Batch, Bath, DyedOrder } from "../../model/batch.js";
import { defaults } from "../../model/defaults.js";
import { isDyed } from "../../model/undyed.js";

/** Parts of one order that one bath dyes one after the other; how many at a time follows from its liquor then. */
export interface Portion extends LoadWork {
  readonly order: DyedOrder;
  readonly part: DyedOrder["part"];
  /** Of parts that missed their shade, and are dipped a second time. */
  readonly again: boolean;
}

/** Every bath's portions in the order of work, and parts started per order (by `order.index`). */
export interface Assignment {
  readonly portions: ReadonlyMap<Bath, readonly Portion[]>;
  readonly started: readonly number[];
  readonly faults: readonly Fault[];
}

type Writable<T> = { -readonly [Key in keyof T]: T[Key] };

/** Loads of all orders together beyond which a plan is refused: it would be years of work. */
export const mostLoads = 20_000;

/**
 * Spreads the orders over the baths: lighter shades first, then the order of the file; where two tanks
 * hold one dye, each load goes to the one with the smaller dyed area per litre so far. Parts that a second dip is
 * to save have loads of their own behind the first ones of their order.
 */
export function assignLoads(
  batch: Batch,
  aimOf: (order: DyedOrder) => Pick<LoadWork, "depth" | "freshSeconds" | "mixed">,
): Assignment {
  const depthOf = (order: DyedOrder): number => aimOf(order).depth;
  const portions = new Map<Bath, Writable<Portion>[]>(mapped(batch.baths, (bath) => [bath, []]));
  const dyed = new Map<Bath, number>(
    mapped(batch.baths, (bath) => [bath, bath.start.kind === "kept" ? bath.start.areaDm2 : 0]),
  );
  const shares = { firstPass: batch.yield, rework: batch.rework ?? defaults.rework, secondPass: 1 };
  const started = mapped(batch.orders, (order) =>
    // What is not dyed is not lost.
    partsToStart(order.quantity, isDyed(order) ? yieldWithRework(shares) : 1),
  );
  const faults: Fault[] = [];
  const sorted = batch.orders.filter(isDyed).sort((a, b) => depthOf(a) - depthOf(b) || a.index - b.index);
  let count = 0;
  const spread = (
    order: DyedOrder,
    all: number,
    again: boolean,
    fitting: readonly { readonly bath: Bath; readonly size: LoadSize }[],
  ): void => {
    const { depth, freshSeconds, mixed } = aimOf(order);
    const use = (bath: Bath): number => (dyed.get(bath) ?? 0) / bath.tank.volumeL;
    for (let left = all; left > 0 && count <= mostLoads; count++) {
      const { bath, size } = fitting.reduce((least, next) =>
        use(next.bath) < use(least.bath) ? next : least,
      );
      const parts = nextLoad(left, size.parts);
      const own = portions.get(bath)!;
      const last = own.at(-1);
      if (last !== undefined && last.order === order && last.again === again) last.parts += parts;
      else own.push({ order, part: order.part, parts, depth, freshSeconds, again, ...(mixed && { mixed }) });
      dyed.set(bath, (dyed.get(bath) ?? 0) + parts * order.part.areaDm2);
      left -= parts;
    }
  };
  faults.push(...batch.baths.filter(isUnderLeast).map(underLeast));
  const works: Work[] = [];
  for (const order of sorted) {
    const sizes = mapped(
      batch.baths.filter((bath) => bath.dye === order.shade.dye),
      (bath) => ({ bath, size: checkedLoadSize(order.part, bath.tank, batch.handling, startVolumeL(bath)) }),
    );
    const fitting = sizes.flatMap(({ bath, size }) => (size.ok ? [{ bath, size: size.value }] : []));
    if (fitting.length === 0) {
      // A bath that starts too low says so itself.
      const known = sizes.flatMap(({ bath, size }) => (isUnderLeast(bath) ? [] : size.faults));
      faults.push(...known.slice(0, 1));
      continue;
    }
    const first = started[order.index]!;
    // A part that is dyed again is dipped like any other.
    works.push({ order, first, again: partsAgain(first, shares), fitting });
  }
  for (const { order, first, again, fitting } of works) {
    spread(order, first, false, fitting);
    spread(order, again, true, fitting);
  }
  if (count > mostLoads) faults.push(tooManyLoads(works));
  return { portions, started, faults };
}

/**
 * Liquor that loads are shared out by: a bath that is topped up is filled before it is heated, and one above its mark is
 * taken down.
 */
const startVolumeL = ({ start, tank, topUp }: Bath): number =>
  start.kind === "fresh" || topUpRecords[topUp].keepsLevel
    ? tank.volumeL
    : Math.min(tank.volumeL, start.volumeL);

/** A bath that starts with less liquor than its heater needs. */
const isUnderLeast = (bath: Bath): boolean =>
  bath.tank.leastL !== undefined && startVolumeL(bath) < bath.tank.leastL * (1 - 1e-9);

/** The fault of a bath in which no load can be dipped, since its heater must not run. */
const underLeast = (bath: Bath): Fault =>
  error(
    "too-little-liquor",
    ["baths", bath.index, "start"],
    `the bath of "${bath.dye.name}" in tank "${bath.tank.name}" starts with ${startVolumeL(bath).toFixed(2)} L, under the ${bath.tank.leastL} L that its heater needs`,
    `write ${toKeepLevel}: it is then filled before it is heated`,
  );

/** Parts of an order to dip, and the baths that can take them. */
interface Work {
  readonly order: DyedOrder;
  readonly first: number;
  readonly again: number;
  readonly fitting: readonly { readonly bath: Bath; readonly size: LoadSize }[];
}

const largestLoad = ({ fitting }: Work): number => largest(mapped(fitting, ({ size }) => size.parts));
const fewestLoads = (work: Work): number => (work.first + work.again) / largestLoad(work);

/** The fault of more loads than a plan goes through, at the order that has most of them. */
function tooManyLoads(works: readonly Work[]): Fault {
  const most = works.reduce((least, next) => (fewestLoads(next) > fewestLoads(least) ? next : least));
  const parts = `${most.first + most.again} parts of "${most.order.part.name}", at most ${largestLoad(most)} a load`;
  const limit = `more than the ${mostLoads} loads that one plan goes through`;
  return error(
    "too-many-loads",
    ["orders", most.order.index, "quantity"],
    works.length === 1
      ? `${parts}, would take ${limit}`
      : `the orders together would take ${limit}; most of them are for ${parts}`,
    "check the quantity and the yield, or split the order over several batches",
  );
}
