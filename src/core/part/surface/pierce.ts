/** Six times the signed volume of the tetrahedron of four points, given by array and offset. */
function side(
  p: Float64Array,
  i: number,
  q: Float64Array,
  j: number,
  r: Float64Array,
  k: number,
  s: Float64Array,
  l: number,
): number {
  const ox = p[i]!;
  const oy = p[i + 1]!;
  const oz = p[i + 2]!;
  const ax = q[j]! - ox;
  const ay = q[j + 1]! - oy;
  const az = q[j + 2]! - oz;
  const bx = r[k]! - ox;
  const by = r[k + 1]! - oy;
  const bz = r[k + 2]! - oz;
  const cx = s[l]! - ox;
  const cy = s[l + 1]! - oy;
  const cz = s[l + 2]! - oz;
  return ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
}

/**
 * Whether an edge of the triangle at i of p goes through the inside of the triangle at j of q; nine numbers a
 * triangle. Touching does not count.
 */
export function pierces(p: Float64Array, i: number, q: Float64Array, j: number): boolean {
  const first = side(q, j, q, j + 3, q, j + 6, p, i);
  let before = first;
  for (let corner = 1; corner <= 3; corner++) {
    const from = i + 3 * (corner - 1);
    const to = i + 3 * (corner % 3);
    const here = corner === 3 ? first : side(q, j, q, j + 3, q, j + 6, p, to);
    const crosses = (before > 0 && here < 0) || (before < 0 && here > 0);
    before = here;
    if (!crosses) continue;
    const a = side(p, from, p, to, q, j, q, j + 3);
    const b = side(p, from, p, to, q, j + 3, q, j + 6);
    const c = side(p, from, p, to, q, j + 6, q, j);
    if ((a > 0 && b > 0 && c > 0) || (a < 0 && b < 0 && c < 0)) return true;
  }
  return false;
}
