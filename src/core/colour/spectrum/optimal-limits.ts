import type { Reading, Xyz } from "../../model/colour.js";
import { tableWeights } from "./weights.js";

/** Outward normals and offsets of the planes that bound a solid: a point p is inside where n·p < offset. */
interface Solid {
  readonly normals: Float64Array;
  readonly offsets: Float64Array;
}

const known = new Map<string, Solid>();

/**
 * The solid of all colours that reflectance between 0 and 1 at 380 to 780 nm by 5 nm can give. It is the sum of
 * 81 line segments, so each face is spanned by two of them: the normal is their cross product, the offset the sum of
 * what lies on its positive side.
 */
function solidOf(reading: Reading): Solid {
  const key = `${reading.illuminant}/${reading.observer}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  const { x, y, z } = tableWeights(reading);
  const count = x.length;
  const normals = new Float64Array(3 * count * (count - 1));
  const offsets = new Float64Array(count * (count - 1));
  let face = 0;
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      let nx = y[i]! * z[j]! - z[i]! * y[j]!;
      let ny = z[i]! * x[j]! - x[i]! * z[j]!;
      let nz = x[i]! * y[j]! - y[i]! * x[j]!;
      const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
      if (length === 0) continue;
      nx /= length;
      ny /= length;
      nz /= length;
      let above = 0;
      let below = 0;
      for (let k = 0; k < count; k++) {
        const d = nx * x[k]! + ny * y[k]! + nz * z[k]!;
        if (d > 0) above += d;
        else below -= d;
      }
      normals.set([nx, ny, nz, -nx, -ny, -nz], 3 * face);
      offsets[face++] = above;
      offsets[face++] = below;
    }
  }
  const solid = { normals: normals.subarray(0, 3 * face), offsets: offsets.subarray(0, face) };
  known.set(key, solid);
  return solid;
}

/**
 * How far a colour lies inside the optimal-colour limits, as a distance in X, Y, Z with Y = 100 for white:
 * negative outside. The limits are those of reflectance at 380 to 780 nm by 5 nm, each value within 0..1.
 *
 * @source macAdam1935 reflectance of zero or one gives the limits of object colours
 * @example insideLimits([20, 20, 20], { illuminant: "D65", observer: 2 }) > 0 // => true
 * @example insideLimits([20, 90, 20], { illuminant: "D65", observer: 2 }) > 0 // => false
 */
export function insideLimits([X, Y, Z]: Xyz, reading: Reading): number {
  const { normals, offsets } = solidOf(reading);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0, j = 0; i < offsets.length; i++, j += 3) {
    const room = offsets[i]! - (normals[j]! * X + normals[j + 1]! * Y + normals[j + 2]! * Z);
    // Written so that NaN gives no colour.
    if (!(room >= least)) least = room;
  }
  return least;
}
