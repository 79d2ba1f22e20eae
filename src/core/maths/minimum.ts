const goldenSection = (3 - Math.sqrt(5)) / 2;

/**
 * A local minimum of a function of one number between two places.
 *
 * Golden sections, with a parabola where it helps. Near a smooth minimum a place cannot be known better than
 * to the root of the rounding error (1e-8 of x); `tolerance` [unit of x] may ask for less.
 * @source brent1973 chapter 5
 * @example
 * findMinimum((x) => (x - 0.3) ** 2, { low: -1, high: 2 }).x // => 0.3000000
 */
export function findMinimum(
  f: (x: number) => number,
  bracket: { readonly low: number; readonly high: number; readonly tolerance?: number },
): { readonly x: number; readonly value: number } {
  let { low, high } = bracket;
  let x = low + goldenSection * (high - low);
  let [second, third] = [x, x];
  let value = f(x);
  let [valueSecond, valueThird] = [value, value];
  let [step, previous] = [0, 0];
  for (let count = 0; count < 200; count += 1) {
    const middle = (low + high) / 2;
    const least = 1.5e-8 * Math.abs(x) + (bracket.tolerance ?? 0) / 3 + 1e-300;
    if (Math.abs(x - middle) <= 2 * least - (high - low) / 2) break;
    const parabola = vertexStep(x, second, third, value, valueSecond, valueThird);
    const inside = x + parabola - low >= 2 * least && high - x - parabola >= 2 * least;
    if (Math.abs(previous) > least && inside && Math.abs(parabola) < Math.abs(previous) / 2) {
      previous = step;
      step = parabola;
    } else {
      previous = x < middle ? high - x : low - x;
      step = goldenSection * previous;
    }
    const trial = x + (Math.abs(step) >= least ? step : Math.sign(step) * least);
    const valueTrial = f(trial);
    if (valueTrial <= value) {
      if (trial < x) high = x;
      else low = x;
      [third, second, x] = [second, x, trial];
      [valueThird, valueSecond, value] = [valueSecond, value, valueTrial];
    } else {
      if (trial < x) low = trial;
      else high = trial;
      if (valueTrial <= valueSecond || second === x) {
        [third, second] = [second, trial];
        [valueThird, valueSecond] = [valueSecond, valueTrial];
      } else if (valueTrial <= valueThird || third === x || third === second) {
        third = trial;
        valueThird = valueTrial;
      }
    }
  }
  return { x, value };
}

/** From x to the vertex of the parabola through three points; NaN or infinite where they are in line. */
function vertexStep(x: number, w: number, v: number, fx: number, fw: number, fv: number): number {
  const r = (x - w) * (fx - fv);
  const q = (x - v) * (fx - fw);
  return ((x - w) * r - (x - v) * q) / (2 * (q - r)) || Number.NaN;
}
