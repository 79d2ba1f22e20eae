/**
 * What a stirred tank holds of a substance while liquor flows in and as much of its own flows out:
 * S = S∞ + (S₀ - S∞) exp(-q t/V), S∞ = V c_in.
 *
 * q flow, V volume, t time, c_in strength of what flows in, in units that fit each other.
 * @source mixingTanks
 * @example
 * flushed(4, { flow: 2, volume: 100, inflow: 0.5 }, 50) // => 33.0775
 */
export function flushed(
  start: number,
  tank: { readonly flow: number; readonly volume: number; readonly inflow: number },
  time: number,
): number {
  const end = tank.volume * tank.inflow;
  return end + (start - end) * Math.exp((-tank.flow * time) / tank.volume);
}

/**
 * What is left of a substance in a stirred tank that gets clean water and loses as much liquor: S₀ exp(-q t/V).
 *
 * q flow, V volume, t time, in units that fit each other. So is a bath weakened that is topped up with water
 * all the time.
 * @source mixingTanks
 * @example
 * washedOut(20, { flow: 5, volume: 200 }, 40) // => 7.35759
 */
export const washedOut = (
  start: number,
  tank: { readonly flow: number; readonly volume: number },
  time: number,
): number => flushed(start, { ...tank, inflow: 0 }, time);

/**
 * Time until that share of the substance is left: V/q ln(1/share).
 * @source mixingTanks
 * @example
 * washOutTime(0.5, { flow: 2, volume: 100 }) // => 34.657
 */
export const washOutTime = (
  shareLeft: number,
  tank: { readonly flow: number; readonly volume: number },
): number => (tank.volume / tank.flow) * -Math.log(shareLeft);

/**
 * How far the n-th of equal stirred tanks in a row has come towards the strength that flows into the first:
 * 1 - exp(-x) Σ xᵏ/k!, k from 0 to n - 1, x = q t/V. All tanks start with clean water.
 * @source mixingTanks
 * @example
 * filledInSeries(1, 1) // => 0.6321206
 * filledInSeries(2, 1) // => 0.2642411
 */
export function filledInSeries(tankNumber: number, turnovers: number): number {
  let term = 1;
  let sum = 0;
  for (let k = 0; k < tankNumber; k++) {
    sum += term;
    term *= turnovers / (k + 1);
  }
  return 1 - Math.exp(-turnovers) * sum;
}
