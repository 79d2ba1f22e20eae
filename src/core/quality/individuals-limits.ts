/** Mean moving range of two over the standard deviation: the mean range of two normal values. */
const d2 = 1.128;

/** Where the readings of a process that only chance moves lie. */
export interface ControlLimits {
  readonly centre: number;
  /** Standard deviation from one reading to the next. */
  readonly sigma: number;
  readonly lower: number;
  readonly upper: number;
  /** Readings that they rest on. */
  readonly readings: number;
}

/** Readings that limits rest on, unless there are fewer. */
export const usualReadings = 20;

/**
 * Control limits of single readings from the first n of them: mean ± 3 σ, σ the mean moving range of two over 1.128.
 * Undefined for fewer than two readings. From fewer than about 25 they are rough: false alarms come more or less often
 * than once in 370 readings.
 * @param values readings in the order of time [any unit]
 * @source nistHandbook section 6.3.2.2
 * @example individualsLimits([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]).upper // => 55.8041
 * @example individualsLimits([3, 5, 4], 2).centre // => 4
 */
export function individualsLimits(
  values: readonly number[],
  readings: number = usualReadings,
): ControlLimits | undefined {
  const base = values.slice(0, readings);
  if (base.length < 2) return undefined;
  const centre = base.reduce((sum, value) => sum + value, 0) / base.length;
  let ranges = 0;
  for (let i = 1; i < base.length; i++) ranges += Math.abs(base[i]! - base[i - 1]!);
  const sigma = ranges / (base.length - 1) / d2;
  return { centre, sigma, lower: centre - 3 * sigma, upper: centre + 3 * sigma, readings: base.length };
}
