/** Of each wait, this long is hands-on: nobody gets to other work in less. Common practice, no source [s]. */
const handsOnSeconds = 600;

/**
 * Of a wait [s], what counts as work.
 * @example
 * handsOnWait(240) // => 240
 * handsOnWait(1500) // => 600
 */
export const handsOnWait = (seconds: number): number => Math.min(seconds, handsOnSeconds);
