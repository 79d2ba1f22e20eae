import { halfWidth95 } from "./half-width-95.js";
import { normalCdf } from "./normal-cdf.js";
import { normalQuantile } from "./normal-quantile.js";

/** A normal distribution by its middle and the half-width of its 95 % interval, cut where values cannot lie. */
export interface TruncatedNormal {
  readonly value: number;
  /** 95 %. */
  readonly halfWidth: number;
  /** Least possible value; 0 where absent. */
  readonly least?: number;
  /** Greatest possible value; none where absent. */
  readonly most?: number;
}

/**
 * The value of a truncated normal distribution that a share u of all its values lies below.
 *
 * Nothing piles up at the cut: what lay beyond it is spread over the rest in proportion. 0 < u < 1. A middle
 * outside the limits by more than nine deviations gives the limit next to it.
 * Common practice, no source.
 * @example
 * truncatedNormalQuantile({ value: 10, halfWidth: 2 }, 0.5) // => 10.0000000
 * truncatedNormalQuantile({ value: 10, halfWidth: 2 }, 0.975) // => 12.0000000
 * truncatedNormalQuantile({ value: 1, halfWidth: 1 }, 0.5) // => 1.01598906
 * truncatedNormalQuantile({ value: 3, halfWidth: 0 }, 0.9) // => 3
 */
export function truncatedNormalQuantile(
  { value, halfWidth, least = 0, most }: TruncatedNormal,
  u: number,
): number {
  const deviation = halfWidth / halfWidth95;
  const inside = (x: number): number => Math.max(least, Math.min(most ?? Number.POSITIVE_INFINITY, x));
  if (!(deviation > 0)) return inside(value);
  const from = normalCdf((least - value) / deviation);
  const to = most === undefined ? 1 : normalCdf((most - value) / deviation);
  return to > from ? inside(value + deviation * normalQuantile(from + u * (to - from))) : inside(value);
}
