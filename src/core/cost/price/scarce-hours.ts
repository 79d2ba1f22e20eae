import { exactSum, exactSumOf } from "../../maths/exact-sum.js";

/** A product that takes hours of one scarce resource. */
export interface ScarceProduct {
  /** What one leaves. */
  readonly contribution: number;
  /** Of the scarce resource [h]. */
  readonly hours: number;
  /** The most that can be sold; unlimited where absent. */
  readonly demand?: number;
  /** The least that must be made; 0 where absent. */
  readonly least?: number;
}

export interface ScarceHours {
  /** Contribution per hour of the resource, in the order of the products; endless where one takes no time. */
  readonly perHour: readonly number[];
  /** Units of each; not rounded. */
  readonly make: readonly number[];
  readonly contribution: number;
  /** What one more hour brings; 0 where hours are left over. */
  readonly nextHour: number;
}

/**
 * The most that limited hours of one resource can bring: what must be made first, then products by their contribution
 * per hour, each up to its demand.
 *
 * Products that leave nothing are made only where they must be. Undefined where the hours do not suffice for what must be
 * made.
 * @source managerialAccounting section 10.6
 * @example
 * scarceHours([{ contribution: 185, hours: 1, demand: 60 }, { contribution: 55, hours: 0.5, demand: 48 }, { contribution: 45, hours: 0.25, demand: 40 }], 80).make // => [60, 20, 40]
 * scarceHours([{ contribution: 16, hours: 0.25, least: 3000 }, { contribution: 32, hours: 0.4, least: 3000 }], 4800).nextHour // => 80
 */
export function scarceHours(products: readonly ScarceProduct[], hours: number): ScarceHours | undefined {
  const perHour = products.map((one) => one.contribution / one.hours);
  const make = products.map(({ least = 0 }) => least);
  let left = hours - exactSumOf(products, (one) => (one.least ?? 0) * one.hours);
  if (left < 0) return undefined;
  let nextHour = 0;
  const ranked = perHour.map((_, i) => i).sort((a, b) => perHour[b]! - perHour[a]! || a - b);
  for (const i of ranked) {
    const { contribution, hours: each, demand = Number.POSITIVE_INFINITY } = products[i]!;
    if (contribution <= 0) break;
    const wanted = Math.max(0, demand - make[i]!);
    const possible = each > 0 ? left / each : Number.POSITIVE_INFINITY;
    const more = Math.min(wanted, possible);
    make[i]! += more;
    left = Math.max(0, left - more * each);
    if (possible < wanted) {
      nextHour = perHour[i]!;
      break;
    }
  }
  return {
    perHour,
    make,
    contribution: exactSum(products.map(({ contribution }, i) => contribution * make[i]!)),
    nextHour,
  };
}
