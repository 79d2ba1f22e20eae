import { halfWidth95 } from "./half-width-95.js";
import { normalQuantile } from "./normal-quantile.js";

/** A log-normal distribution: its median, and the factor from it to either end of its 95 % interval. */
export interface LogNormal {
  readonly value: number;
  /** At least 1; 95 % of all values lie between `value / factor` and `value * factor`. */
  readonly factor: number;
}

/**
 * Standard deviation of the logarithm of a quantity that is known to a factor in 95 of 100 cases.
 *
 * ln f / 1.96. Valid for f ≥ 1.
 * Common practice, no source.
 * @example
 * deviationOfFactor(4) // => 0.707306
 * deviationOfFactor(1) // => 0
 */
export const deviationOfFactor = (factor: number): number => Math.log(factor) / halfWidth95;

/**
 * The value of a log-normal distribution that a share u of all its values lies below.
 *
 * 0 < u < 1, value > 0, factor ≥ 1.
 * Common practice, no source.
 * @example
 * logNormalQuantile({ value: 0.8, factor: 3 }, 0.5) // => 0.80000000
 * logNormalQuantile({ value: 0.8, factor: 3 }, 0.975) // => 2.4000000
 * logNormalQuantile({ value: 0.8, factor: 3 }, 0.025) // => 0.26666667
 */
export const logNormalQuantile = ({ value, factor }: LogNormal, u: number): number =>
  value * Math.exp(deviationOfFactor(factor) * normalQuantile(u));
