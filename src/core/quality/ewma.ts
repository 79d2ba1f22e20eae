/** How much the newest reading counts, and how many standard deviations of the average its limits are away. */
export interface EwmaSetting {
  readonly lambda: number;
  readonly width: number;
}

/** One false alarm in 370 readings, as with 3 σ of single ones; a shift of 1 σ is seen after some ten readings. */
export const usualEwma: EwmaSetting = { lambda: 0.2, width: 2.86 };

/**
 * Exponentially weighted moving averages: z_i = λ x_i + (1 - λ) z_(i-1), z_0 the centre.
 * @param values readings in the order of time [any unit]
 * @param centre where the process should be [the same unit]
 * @source lucasSaccucci1990
 * @example ewma([52, 47, 53], 50, 0.3) // => [50.6, 49.52, 50.564]
 */
export function ewma(values: readonly number[], centre: number, lambda: number = usualEwma.lambda): number[] {
  let average = centre;
  return values.map((value) => {
    average = lambda * value + (1 - lambda) * average;
    return average;
  });
}

/**
 * Half the width between the limits of the average after n readings: L σ √(λ/(2 - λ) (1 - (1 - λ)^(2n))); with n of
 * infinity the width that it settles to. The limits of the first readings are narrower, so that a wrong start is seen
 * soon.
 * @param sigma standard deviation of the readings [any unit]
 * @source lucasSaccucci1990
 * @example ewmaHalfWidth(2.0539, Infinity, { lambda: 0.3, width: 3 }) // => 2.5884
 */
export const ewmaHalfWidth = (sigma: number, n: number, { lambda, width }: EwmaSetting = usualEwma): number =>
  width * sigma * Math.sqrt((lambda / (2 - lambda)) * (1 - (1 - lambda) ** (2 * n)));
