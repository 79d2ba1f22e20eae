import type { Plan } from "../../plan/plan-model.js";

/**
 * When the last parts of each order of a plan are ready [minutes from the start of its day], by the order's number: out
 * of the dryer, which takes parts as they come out of the baths, or out of the bath where there is no dryer.
 */
export function readyMinutes({ timeline, baths, dryer }: Plan): ReadonlyMap<number, number> {
  const ready = new Map<number, number>();
  const later = (order: number, minute: number): void => {
    ready.set(order, Math.max(ready.get(order) ?? 0, minute));
  };
  const orderOf = (bath: number, load: number): number =>
    baths.find((one) => one.bath === bath)!.loads[load - 1]!.order;
  const wet: { readonly order: number; parts: number }[] = [];
  let inside: readonly number[] = [];
  for (const { what, bath, load, parts = 0, endMinute } of timeline) {
    if (what === "dip") {
      const order = orderOf(bath!, load!);
      if (dryer === null) later(order, endMinute);
      else wet.push({ order, parts });
    } else if (what === "dryer loading") inside = takeOut(wet, parts);
    else if (what === "dryer emptying") for (const order of inside) later(order, endMinute);
  }
  return ready;
}

/** Takes the parts that have waited longest; gives the orders that they are of. */
function takeOut(wet: { readonly order: number; parts: number }[], parts: number): number[] {
  const orders: number[] = [];
  for (let left = parts; left > 0 && wet.length > 0; ) {
    const [first] = wet as [(typeof wet)[number]];
    orders.push(first.order);
    const taken = Math.min(left, first.parts);
    left -= taken;
    first.parts -= taken;
    if (first.parts === 0) wet.shift();
  }
  return orders;
}
