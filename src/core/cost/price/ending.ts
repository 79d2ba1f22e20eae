/** Shares by which a price may lie above its ending and still count as on it: the noise of arithmetic, not money. */
const OF_AMOUNT = 1e-9;
const OF_STEP = 1e-6;

/**
 * The step between prices of one ending: the smallest power of ten above it, and 1 for the ending 0.
 * @example
 * endingStep(0.9) // => 1
 * endingStep(0.05) // => 0.1
 * endingStep(95) // => 100
 */
export function endingStep(ending: number): number {
  if (ending <= 0) return 1;
  let power = Math.ceil(Math.log10(ending)) - 1;
  while (Number(`1e${power}`) <= ending) power++;
  return Number(`1e${power}`);
}

/**
 * The next price, at or above the amount, that ends so: ending + a whole number of steps.
 *
 * Never lowers a price, but that an amount above its ending by arithmetic noise only (under 1e-9 of itself and
 * 1e-6 of the step) stays there.
 * @example
 * nextEnding(12.3, 0.9) // => 12.9
 * nextEnding(12.91, 0.9) // => 13.9
 * nextEnding(12.9, 0.9) // => 12.9
 * nextEnding(130, 95) // => 195
 */
export function nextEnding(amount: number, ending: number): number {
  const step = endingStep(ending);
  const slack = Math.min(OF_AMOUNT * Math.abs(amount), OF_STEP * step);
  const steps = Math.max(0, Math.ceil((amount - slack - ending) / step));
  return Number((ending + steps * step).toPrecision(15));
}
