/** What adding up triangles leaves behind; lengths in the unit of the file. */
export interface SurfaceSums {
  triangles: number;
  /** Triangles without area: corners that coincide or lie in a line. */
  flat: number;
  area: number;
  /** Positive if the surface is closed and its triangles run counter-clockwise seen from outside. */
  volume: number;
  /** What the last additions to area and volume rounded off. */
  areaRest: number;
  volumeRest: number;
  /** First corner: the apex of all tetrahedra, so that a part far from the origin loses no digits. */
  readonly apex: [x: number, y: number, z: number];
  readonly low: [x: number, y: number, z: number];
  readonly high: [x: number, y: number, z: number];
}

/** Sums of no triangle. */
export const noSums = (): SurfaceSums => ({
  triangles: 0,
  flat: 0,
  area: 0,
  volume: 0,
  areaRest: 0,
  volumeRest: 0,
  apex: [0, 0, 0],
  low: [Infinity, Infinity, Infinity],
  high: [-Infinity, -Infinity, -Infinity],
});

/**
 * Adds triangles to the sums: area = 1/2 |(b - a) x (c - a)|, volume = 1/6 (a - o) . ((b - a) x (c - a)) with
 * the apex o [length of the file]; both by compensated summation (Kahan). The volume of a closed surface does
 * not depend on o; that of an open one does.
 * @example
 * (() => { const s = noSums(); addTriangles(s, Float64Array.of(0, 0, 0, 3, 0, 0, 0, 4, 0), 1); return s.area; })() // => 6
 */
export function addTriangles(sums: SurfaceSums, chunk: Float64Array, count: number): void {
  if (count === 0) return;
  const { apex, low, high } = sums;
  if (sums.triangles === 0) {
    apex[0] = chunk[0]!;
    apex[1] = chunk[1]!;
    apex[2] = chunk[2]!;
  }
  const [ox, oy, oz] = apex;
  let [lx, ly, lz] = low;
  let [hx, hy, hz] = high;
  let { flat, area, areaRest, volume, volumeRest } = sums;
  for (let i = 0; i < 9 * count; i += 9) {
    const ax = chunk[i]!;
    const ay = chunk[i + 1]!;
    const az = chunk[i + 2]!;
    const bx = chunk[i + 3]!;
    const by = chunk[i + 4]!;
    const bz = chunk[i + 5]!;
    const cx = chunk[i + 6]!;
    const cy = chunk[i + 7]!;
    const cz = chunk[i + 8]!;
    lx = Math.min(lx, ax, bx, cx);
    ly = Math.min(ly, ay, by, cy);
    lz = Math.min(lz, az, bz, cz);
    hx = Math.max(hx, ax, bx, cx);
    hy = Math.max(hy, ay, by, cy);
    hz = Math.max(hz, az, bz, cz);
    const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
    const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
    const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    const twice = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (twice === 0) flat++;
    const moreArea = twice / 2 - areaRest;
    const newArea = area + moreArea;
    areaRest = newArea - area - moreArea;
    area = newArea;
    const six = (ax - ox) * nx + (ay - oy) * ny + (az - oz) * nz;
    const moreVolume = six / 6 - volumeRest;
    const newVolume = volume + moreVolume;
    volumeRest = newVolume - volume - moreVolume;
    volume = newVolume;
  }
  Object.assign(sums, { triangles: sums.triangles + count, flat, area, areaRest, volume, volumeRest });
  low[0] = lx;
  low[1] = ly;
  low[2] = lz;
  high[0] = hx;
  high[1] = hy;
  high[2] = hz;
}
