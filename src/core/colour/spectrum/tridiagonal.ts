/**
 * Solves T X = B in place, T symmetric tridiagonal with every off-diagonal -1, by elimination with row exchanges.
 * `diagonal` has n numbers; `right` holds B row by row, `columns` numbers a row, and becomes X.
 *
 * Valid unless T is singular to the last bit; then the result is not finite.
 * @example solveTridiagonal(Float64Array.of(2, 2), Float64Array.of(3, 0), 1) // => Float64Array.of(2, 1)
 */
export function solveTridiagonal(diagonal: Float64Array, right: Float64Array, columns: number): Float64Array {
  const n = diagonal.length;
  const main = new Float64Array(n);
  const upper = new Float64Array(n);
  const second = new Float64Array(n);
  let a = diagonal[0]!;
  let b = -1;
  for (let i = 0; i < n - 1; i++) {
    // The row below is (-1, d, -1); the row at hand is (a, b, 0).
    const d = diagonal[i + 1]!;
    const last = i === n - 2 ? 0 : -1;
    const here = i * columns;
    const below = here + columns;
    if (Math.abs(a) >= 1) {
      const f = -1 / a;
      main[i] = a;
      upper[i] = b;
      for (let k = 0; k < columns; k++) right[below + k] = right[below + k]! - f * right[here + k]!;
      a = d - f * b;
      b = last;
    } else {
      main[i] = -1;
      upper[i] = d;
      second[i] = last;
      for (let k = 0; k < columns; k++) {
        const swapped = right[below + k]!;
        right[below + k] = right[here + k]! + a * swapped;
        right[here + k] = swapped;
      }
      const rest = b + a * d;
      b = a * last;
      a = rest;
    }
  }
  main[n - 1] = a;
  for (let i = n - 1; i >= 0; i--) {
    const here = i * columns;
    for (let k = 0; k < columns; k++) {
      let value = right[here + k]!;
      if (i + 1 < n) value -= upper[i]! * right[here + columns + k]!;
      if (i + 2 < n) value -= second[i]! * right[here + 2 * columns + k]!;
      right[here + k] = value / main[i]!;
    }
  }
  return right;
}
