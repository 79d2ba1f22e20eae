/**
 * A smooth curve through points that rises where they rise, falls where they fall and never overshoots them.
 *
 * Piecewise cubic with limited slopes; `x` strictly ascending, at least one point. Outside the points the
 * curve keeps the value of the nearest one.
 * @source fritschCarlson1980 section 3, region of the circle of radius 3
 * @example
 * monotoneCubic([0, 1, 2], [0, 1, 4])(1) // => 1
 * monotoneCubic([0, 1, 2], [5, 5, 9])(0.5) // => 5
 * monotoneCubic([0, 1, 2], [0, 1, 4])(7) // => 4
 */
export function monotoneCubic(x: readonly number[], y: readonly number[]): (at: number) => number {
  const slopes = limitedSlopes(x, y);
  const last = x.length - 1;
  return (at) => {
    if (!(at > x[0]!)) return Number.isNaN(at) ? Number.NaN : y[0]!;
    if (at >= x[last]!) return y[last]!;
    const i = intervalOf(x, at);
    const width = x[i + 1]! - x[i]!;
    const t = (at - x[i]!) / width;
    const rise = y[i + 1]! - y[i]!;
    const bend = (slopes[i]! * (1 - t) - slopes[i + 1]! * t) * width + rise * (2 * t - 1);
    return y[i]! + t * (rise + (1 - t) * bend);
  };
}

/** The i with x[i] <= at < x[i + 1]. */
function intervalOf(x: readonly number[], at: number): number {
  let [low, high] = [0, x.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle]! <= at) low = middle;
    else high = middle;
  }
  return low;
}

/** Slopes at the points: means of the neighbours, cut back to keep each piece monotone. */
function limitedSlopes(x: readonly number[], y: readonly number[]): number[] {
  const secants = x.slice(1).map((next, i) => (y[i + 1]! - y[i]!) / (next - x[i]!));
  const slopes = x.map((_, i) => {
    const left = secants[i - 1] ?? secants[i] ?? 0;
    const right = secants[i] ?? left;
    return left * right <= 0 ? 0 : (left + right) / 2;
  });
  secants.forEach((secant, i) => {
    if (secant === 0) {
      slopes[i] = 0;
      slopes[i + 1] = 0;
      return;
    }
    const size = Math.hypot(slopes[i]! / secant, slopes[i + 1]! / secant);
    if (size <= 3) return;
    slopes[i]! *= 3 / size;
    slopes[i + 1]! *= 3 / size;
  });
  return slopes;
}
