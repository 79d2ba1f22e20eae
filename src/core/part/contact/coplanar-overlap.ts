/** Twice the area vector of the triangle at i, nine numbers: (b - a) x (c - a). */
function normalInto(t: Float64Array, i: number, into: Float64Array): number {
  const ux = t[i + 3]! - t[i]!;
  const uy = t[i + 4]! - t[i + 1]!;
  const uz = t[i + 5]! - t[i + 2]!;
  const vx = t[i + 6]! - t[i]!;
  const vy = t[i + 7]! - t[i + 1]!;
  const vz = t[i + 8]! - t[i + 2]!;
  into[0] = uy * vz - uz * vy;
  into[1] = uz * vx - ux * vz;
  into[2] = ux * vy - uy * vx;
  return Math.sqrt(into[0]! * into[0]! + into[1]! * into[1]! + into[2]! * into[2]!);
}

/** The part of a polygon, u v of each corner, that lies to the left of the line from a to b. */
function leftOf(polygon: readonly number[], au: number, av: number, bu: number, bv: number): number[] {
  const kept: number[] = [];
  const height = (n: number): number => (bu - au) * (polygon[n + 1]! - av) - (bv - av) * (polygon[n]! - au);
  for (let n = 0; n < polygon.length; n += 2) {
    const m = (n + 2) % polygon.length;
    const [here, next] = [height(n), height(m)];
    if (here >= 0) kept.push(polygon[n]!, polygon[n + 1]!);
    if (here * next >= 0) continue;
    const share = here / (here - next);
    kept.push(
      polygon[n]! + share * (polygon[m]! - polygon[n]!),
      polygon[n + 1]! + share * (polygon[m + 1]! - polygon[n + 1]!),
    );
  }
  return kept;
}

/** Twice the signed area of a polygon. */
function twiceArea(polygon: readonly number[]): number {
  let sum = 0;
  for (let n = 0; n < polygon.length; n += 2) {
    const m = (n + 2) % polygon.length;
    sum += polygon[n]! * polygon[m + 1]! - polygon[m]! * polygon[n + 1]!;
  }
  return sum;
}

const [first, second] = [new Float64Array(3), new Float64Array(3)];

/**
 * The area in which two triangles lie on each other: positive where they face the same way, negative where they face
 * each other, 0 where they are not in one plane. Triangles at i and j, nine numbers each; the smaller one has all its
 * corners within the tolerance of the plane of the larger one [unit of the coordinates].
 *
 * The smaller triangle is clipped by the edges of the larger one (Sutherland-Hodgman), seen along an axis.
 * @example
 * coplanarOverlap(Float64Array.of(0,0,0, 2,0,0, 0,2,0,  0,0,0, 1,0,0, 0,1,0), 0, 9, 1e-6) // => 0.5
 * coplanarOverlap(Float64Array.of(0,0,0, 2,0,0, 0,2,0,  0,0,0, 0,1,0, 1,0,0), 0, 9, 1e-6) // => -0.5
 * coplanarOverlap(Float64Array.of(0,0,0, 2,0,0, 0,2,0,  0,0,1, 1,0,1, 0,1,1), 0, 9, 1e-6) // => 0
 */
export function coplanarOverlap(triangles: Float64Array, i: number, j: number, tolerance: number): number {
  const [sizeI, sizeJ] = [normalInto(triangles, i, first), normalInto(triangles, j, second)];
  if (sizeI === 0 || sizeJ === 0) return 0;
  const [large, small, normal, size] = sizeI < sizeJ ? [j, i, second, sizeJ] : [i, j, first, sizeI];
  for (let corner = 0; corner < 9; corner += 3) {
    let height = 0;
    for (let k = 0; k < 3; k++)
      height += normal[k]! * (triangles[small + corner + k]! - triangles[large + k]!);
    if (Math.abs(height) > tolerance * size) return 0;
  }
  const [x, y, z] = [Math.abs(normal[0]!), Math.abs(normal[1]!), Math.abs(normal[2]!)];
  const dropped = x >= y && x >= z ? 0 : y >= z ? 1 : 2;
  const [u, v] = [(dropped + 1) % 3, (dropped + 2) % 3];
  // Seen from the side that the larger triangle faces, its corners run counter-clockwise.
  const turned = normal[dropped]! < 0 ? -1 : 1;
  const at = (triangle: number, corner: number): [number, number] => [
    turned * (triangles[triangle + 3 * corner + u]! - triangles[large + u]!),
    triangles[triangle + 3 * corner + v]! - triangles[large + v]!,
  ];
  let polygon = [...at(small, 0), ...at(small, 1), ...at(small, 2)];
  for (let corner = 0; corner < 3 && polygon.length > 0; corner++)
    polygon = leftOf(polygon, ...at(large, corner), ...at(large, (corner + 1) % 3));
  return (twiceArea(polygon) / 2) * (size / Math.abs(normal[dropped]!));
}
