/**
 * Where a continuous function crosses zero between two places at which it has opposite signs.
 *
 * Inverse quadratic and secant steps, guarded by bisection, so it never leaves the bracket. Undefined where the
 * signs do not differ or a value is NaN. `tolerance` is the width of the last bracket [unit of x]; 0: to rounding.
 * @source brent1973 chapter 4
 * @example
 * findRoot((x) => x * x - 2, { low: 0, high: 2 }) // => 1.414213562373
 * findRoot((x) => x * x + 2, { low: 0, high: 2 }) // => undefined
 */
export function findRoot(
  f: (x: number) => number,
  bracket: { readonly low: number; readonly high: number; readonly tolerance?: number },
): number | undefined {
  let [a, b] = [bracket.low, bracket.high];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(Math.sign(fa) * Math.sign(fb) < 0)) return undefined;
  let [c, fc] = [a, fa];
  let step = b - a;
  let previous = step;
  for (let count = 0; count < 200; count += 1) {
    if (Math.sign(fb) === Math.sign(fc)) {
      [c, fc] = [a, fa];
      step = b - a;
      previous = step;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + (bracket.tolerance ?? 0) / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= least || fb === 0) return b;
    const guess = interpolated(a, b, c, fa, fb, fc);
    if (Math.abs(previous) >= least && Math.abs(fa) > Math.abs(fb) && usable(guess, half, least, previous)) {
      previous = step;
      step = guess;
    } else {
      step = half;
      previous = half;
    }
    [a, fa] = [b, fb];
    b += Math.abs(step) > least ? step : Math.sign(half) * least;
    fb = f(b);
    if (Number.isNaN(fb)) return undefined;
  }
  return b;
}

/** Step from b to the zero of the secant or inverse parabola through the last points. */
function interpolated(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const s = fb / fa;
  if (a === c) return (s * (c - b)) / (s - 1);
  const q = fa / fc;
  const r = fb / fc;
  const p = s * ((c - b) * q * (q - r) - (b - a) * (r - 1));
  return -p / ((q - 1) * (r - 1) * (s - 1));
}

/** A step is taken when it stays in the bracket and at least halves the step before last. */
const usable = (step: number, half: number, least: number, previous: number): boolean =>
  step / half > 0 && 2 * Math.abs(step) < Math.min(3 * Math.abs(half) - least, Math.abs(previous));
