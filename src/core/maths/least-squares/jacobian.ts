/**
 * Slopes of several functions over several parameters by central differences: row i, column j is dr_i/dp_j.
 * The step is the cube root of the rounding error times the size of the parameter, which leaves about ten
 * right digits of a smooth function. `size` replaces a parameter that is 0 or close to it.
 * @example
 * numericJacobian((p) => [p[0] * p[1]], [3, 2], [1, 1])[0][1] // => 3.000000000
 */
export function numericJacobian(
  functions: (p: readonly number[]) => readonly number[],
  p: readonly number[],
  size: readonly number[],
): number[][] {
  const columns = p.map((value, j) => {
    const step = Math.cbrt(Number.EPSILON) * Math.max(Math.abs(value), size[j]!);
    const above = value + step;
    const below = value - step;
    const up = functions(p.with(j, above));
    const down = functions(p.with(j, below));
    return up.map((high, i) => (high - down[i]!) / (above - below));
  });
  return (columns[0] ?? []).map((_, i) => columns.map((column) => column[i]!));
}
