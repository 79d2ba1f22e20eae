import type { Batch, Dye, Order, Shade, Tank } from "../../../../src/core/model/batch.js";
import { daysLater } from "../../../../src/core/quantity/days.js";
import type { WeekWish } from "../../../../src/core/week/week-model.js";
import { randomNumbers } from "../../../tools/random-numbers.js";
import { batch, deep, dye, hook, light, tank, tray } from "../../plan/sample.js";

/** A random week that can be tried in every way: two or three dyes in one or two tanks, and four orders. */
export function smallWeek(seed: number): { readonly batch: Batch; readonly wish: WeekWish } {
  const random = randomNumbers(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const tanks: Tank[] = [
    { ...tank, heaterW: 600 + 200 * Math.floor(random() * 3) },
    { ...tank, name: "ten", volumeL: 10, capacityL: 12, wallAreaDm2: 23, surfaceCm2: 700, heaterW: 1100 },
  ].slice(0, 1 + Math.floor(random() * 2));
  const dyes: Dye[] = ["coral", "moss", "ink"]
    .slice(0, 2 + Math.floor(random() * 2))
    .map((name, i) => ({ ...dye, name, celsius: 75 + 3 * i }));
  const shades: Shade[] = dyes.flatMap((one) =>
    [light, deep].map((shade) => ({ ...shade, name: `${one.name}-${shade.name}`, dye: one })),
  );
  const baths = dyes.map((one, index) => ({
    index,
    tank: tanks[index % tanks.length]!,
    dye: one,
    start: { kind: "fresh" } as const,
    topUp: "strength" as const,
    after: "keep" as const,
  }));
  const from = "2027-04-12";
  const orders: Order[] = Array.from({ length: 4 }, (_, index) => ({
    index,
    part: pick([hook, tray]),
    shade: pick(shades),
    quantity: 5 + Math.floor(random() * 90),
    ...(random() < 0.75 ? { due: daysLater(from, Math.floor(random() * 3)) } : {}),
  }));
  const shop: Batch = { ...batch, tanks, dyes, shades, baths, orders };
  const hours = pick([3.5, 4, 5, 6]);
  return {
    batch: shop,
    wish: { people: 1, from, weekdays: [1, 2, 3, 4, 5], dayMinutes: 60 * hours, dayAssumed: false },
  };
}
