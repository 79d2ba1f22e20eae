import type { Carried } from "./carried-strength.js";
import { carryOverShift, type Liquor, rinsesUnseen } from "./carry-over.js";
import { leastHarmOrder, mostOrdered } from "./least-harm-order.js";

/** What one bath does to the next when both use a tank, a basket or tongs. */
export interface TankStep {
  readonly after: string;
  readonly into: string;
  /** Without a rinse [CIEDE2000]. */
  readonly shift: number;
  /** The fewest that keep the shift under 0.3. */
  readonly rinses: number;
}

/** Baths that follow each other in one tank. */
export interface ThroughOneTank {
  readonly carried: Carried;
  /** The order in which they harm each other least. */
  readonly order: readonly string[];
  /** From each one to the next in that order. */
  readonly steps: readonly TankStep[];
  /** The worst step of all orders. */
  readonly worst: TankStep;
}

/** The order of some baths through one tank, and what each does to the next; undefined for fewer than two. */
export function throughOneTank(
  baths: readonly Liquor[],
  seconds: number,
  carried: Carried,
): ThroughOneTank | undefined {
  const ordered = baths.slice(0, mostOrdered);
  if (ordered.length < 2) return undefined;
  const harms = ordered.map((after) =>
    ordered.map((into) => (after === into ? 0 : carryOverShift(after, into, seconds, carried))),
  );
  const step = (i: number, j: number): TankStep => ({
    after: ordered[i]!.name,
    into: ordered[j]!.name,
    shift: harms[i]![j]!,
    rinses: rinsesUnseen(ordered[i]!, ordered[j]!, seconds, carried),
  });
  const order = leastHarmOrder(harms);
  let [i, j] = [0, 1];
  harms.forEach((row, after) => {
    row.forEach((shift, into) => {
      if (shift > harms[i]![j]!) [i, j] = [after, into];
    });
  });
  return {
    carried,
    order: order.map((at) => ordered[at]!.name),
    steps: order.slice(1).map((into, n) => step(order[n]!, into)),
    worst: step(i, j),
  };
}
