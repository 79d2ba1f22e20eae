import type { Point } from "./winding.js";

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

/** Whether an edge of the triangle at i of p goes through the inside of the triangle at j of q. */
function pierces(p: Float64Array, i: number, q: Float64Array, j: number): boolean {
  const sides = [0, 3, 6].map((corner) => side(q, j, q, j + 3, q, j + 6, p, i + corner));
  for (let edge = 0; edge < 3; edge++) {
    const from = i + 3 * edge;
    const to = i + 3 * ((edge + 1) % 3);
    if (sides[edge]! * sides[(edge + 1) % 3]! >= 0) continue;
    const a = side(p, from, p, to, q, j, q, j + 3);
    const b = side(p, from, p, to, q, j + 3, q, j + 6);
    const c = side(p, from, p, to, q, j + 6, q, j);
    if ((a > 0 && b > 0 && c > 0) || (a < 0 && b < 0 && c < 0)) return true;
  }
  return false;
}

const lowest = (t: Float64Array, i: number, axis: number): number =>
  Math.min(t[i + axis]!, t[i + 3 + axis]!, t[i + 6 + axis]!);
const highest = (t: Float64Array, i: number, axis: number): number =>
  Math.max(t[i + axis]!, t[i + 3 + axis]!, t[i + 6 + axis]!);

/** The triangles moved by a shift. */
export const shifted = (triangles: Float64Array, shift: Point): Float64Array =>
  triangles.map((value, i) => value + shift[i % 3]!);

/** Triangles that reach into a box, sorted by their lowest x. */
function within(triangles: Float64Array, low: Point, high: Point): Int32Array {
  const found: number[] = [];
  for (let i = 0; i < triangles.length; i += 9)
    if (
      [0, 1, 2].every(
        (axis) => highest(triangles, i, axis) >= low[axis]! && lowest(triangles, i, axis) <= high[axis]!,
      )
    )
      found.push(i);
  return Int32Array.from(found).sort((i, j) => lowest(triangles, i, 0) - lowest(triangles, j, 0));
}

/**
 * Whether two surfaces cross inside a box: some edge of one goes through a triangle of the other. Undefined if
 * that would take more than so many comparisons. Surfaces that only touch need not cross.
 */
export function surfacesCross(
  a: Float64Array,
  b: Float64Array,
  low: Point,
  high: Point,
  mostComparisons: number,
): boolean | undefined {
  const inA = within(a, low, high);
  const inB = within(b, low, high);
  let comparisons = 0;
  let first = 0;
  const longest = inB.reduce((most, j) => Math.max(most, highest(b, j, 0) - lowest(b, j, 0)), 0);
  for (const i of inA) {
    const from = lowest(a, i, 0);
    const to = highest(a, i, 0);
    while (first < inB.length && lowest(b, inB[first]!, 0) + longest < from) first++;
    for (let n = first; n < inB.length && lowest(b, inB[n]!, 0) <= to; n++) {
      if (++comparisons > mostComparisons) return undefined;
      const j = inB[n]!;
      const apart = [0, 1, 2].some(
        (axis) => highest(a, i, axis) < lowest(b, j, axis) || highest(b, j, axis) < lowest(a, i, axis),
      );
      if (!apart && (pierces(a, i, b, j) || pierces(b, j, a, i))) return true;
    }
  }
  return false;
}
