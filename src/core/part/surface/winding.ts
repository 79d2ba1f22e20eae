/** A point or a shift of one [any length]. */
export type Point = readonly [x: number, y: number, z: number];

/**
 * How often a closed surface winds around a point: 1 inside a solid whose triangles face outwards, 0 outside;
 * the sum of the solid angles of its triangles over 4 pi, each by the arc tangent of the triple product of the
 * vectors a, b, c from the point to the corners, tan(angle/2) = a.(b x c) / (|a||b||c| + (a.b)|c| + (b.c)|a| + (c.a)|b|).
 * Nine numbers a triangle. On the surface itself it is something in between.
 * @source vanOosterom1983 the formula for tan(angle/2)
 * @example
 * windingNumber(Float64Array.of(0,0,0, 0,1,0, 1,0,0,  0,0,0, 1,0,0, 0,0,1,  0,0,0, 0,0,1, 0,1,0,  1,0,0, 0,1,0, 0,0,1), [0.1, 0.1, 0.1]) // => 1.000000
 */
export function windingNumber(triangles: Float64Array, [px, py, pz]: Point): number {
  let halfAngles = 0;
  for (let i = 0; i < triangles.length; i += 9) {
    const ax = triangles[i]! - px;
    const ay = triangles[i + 1]! - py;
    const az = triangles[i + 2]! - pz;
    const bx = triangles[i + 3]! - px;
    const by = triangles[i + 4]! - py;
    const bz = triangles[i + 5]! - pz;
    const cx = triangles[i + 6]! - px;
    const cy = triangles[i + 7]! - py;
    const cz = triangles[i + 8]! - pz;
    const a = Math.sqrt(ax * ax + ay * ay + az * az);
    const b = Math.sqrt(bx * bx + by * by + bz * bz);
    const c = Math.sqrt(cx * cx + cy * cy + cz * cz);
    const triple = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    const below =
      a * b * c +
      (ax * bx + ay * by + az * bz) * c +
      (bx * cx + by * cy + bz * cz) * a +
      (cx * ax + cy * ay + cz * az) * b;
    halfAngles += Math.atan2(triple, below);
  }
  return halfAngles / (2 * Math.PI);
}
