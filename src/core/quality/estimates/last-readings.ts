import { halfWidth95 } from "../../maths/sampling/half-width-95.js";

/** Readings that tell what the bath does now. */
export const lastReadings = 3;

/** How far the pace of a bath drifts from what a log of weeks says, one standard deviation of its logarithm. */
const drift = 0.05;

/** Factor on times that the last readings ask for, beside all that is learned already. */
export interface LastFactor {
  readonly readings: number;
  /** As they were read. */
  readonly raw: number;
  /** To use: 1 where noise alone explains them, else drawn towards 1 by its share. */
  readonly factor: number;
}

/** A reading beside what all that is learned makes of it. */
export interface LastReading {
  /** ln of the fresh time foreseen less that read: how much longer the dip should have been. */
  readonly apart: number;
  /** Of it, from reading and timing, one standard deviation. */
  readonly deviation: number;
  /** Readings of one shade share what the noise of the swatches does to it. */
  readonly shade: string;
  readonly swatchDeviation: number;
}

/** Variance of the mean of readings: each has its own noise, and those of a shade share that of its swatches. */
function varianceOfMean(readings: readonly LastReading[]): number {
  const shared = new Map<string, number>();
  let own = 0;
  for (const { deviation, shade, swatchDeviation } of readings) {
    own += deviation ** 2;
    shared.set(shade, (shared.get(shade) ?? 0) + swatchDeviation);
  }
  const swatches = [...shared.values()].reduce((sum, value) => sum + value ** 2, 0);
  return (own + swatches) / readings.length ** 2;
}

/**
 * The factor on times that the last three readings ask for, in the order of time. Undefined with fewer.
 * @example
 * lastFactor([1, 2, 3].map(() => ({ apart: 0.15, deviation: 0.05, shade: "red", swatchDeviation: 0.03 }))).raw // => 1.162
 * lastFactor([1, 2, 3].map(() => ({ apart: 0.15, deviation: 0.05, shade: "red", swatchDeviation: 0.03 }))).factor // => 1.093
 * lastFactor([1, 2, 3].map(() => ({ apart: 0.05, deviation: 0.05, shade: "red", swatchDeviation: 0.03 }))).factor // => 1
 */
export function lastFactor(readings: readonly LastReading[]): LastFactor | undefined {
  const last = readings.slice(-lastReadings);
  if (last.length < lastReadings) return undefined;
  const mean = last.reduce((sum, { apart }) => sum + apart, 0) / lastReadings;
  const variance = varianceOfMean(last);
  const share = drift ** 2 / (drift ** 2 + variance);
  const more = Math.abs(mean) > halfWidth95 * Math.sqrt(variance);
  return { readings: lastReadings, raw: Math.exp(mean), factor: more ? Math.exp(share * mean) : 1 };
}
