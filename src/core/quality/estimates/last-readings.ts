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

/**
 * The factor on times that the last three readings ask for. Undefined with fewer.
 * @param apart ln of the fresh time foreseen less that read, in the order of time
 * @param deviations of each [standard deviations]
 * @example
 * lastFactor([0, 0.1, 0.1, 0.1], [0.05, 0.05, 0.05, 0.05]).raw // => 1.105
 * lastFactor([0, 0.1, 0.1, 0.1], [0.05, 0.05, 0.05, 0.05]).factor // => 1.078
 * lastFactor([0.05, 0.05, 0.05], [0.05, 0.05, 0.05]).factor // => 1
 * lastFactor([0.1, 0.1], [0.05, 0.05]) // => undefined
 */
export function lastFactor(apart: readonly number[], deviations: readonly number[]): LastFactor | undefined {
  if (apart.length < lastReadings) return undefined;
  const mean = apart.slice(-lastReadings).reduce((sum, value) => sum + value, 0) / lastReadings;
  const variance =
    deviations.slice(-lastReadings).reduce((sum, value) => sum + value ** 2, 0) / lastReadings ** 2;
  const share = drift ** 2 / (drift ** 2 + variance);
  const more = Math.abs(mean) > halfWidth95 * Math.sqrt(variance);
  return { readings: lastReadings, raw: Math.exp(mean), factor: more ? Math.exp(share * mean) : 1 };
}
