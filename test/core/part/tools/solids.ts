export type Vector = [number, number, number];
/** A closed surface: places, and triangles counter-clockwise seen from outside. */
export interface Solid {
  points: Vector[];
  faces: Vector[];
}

/** A box from a corner, with edges along the axes. */
export function box([x, y, z]: Vector, [w, d, h]: Vector): Solid {
  const points = Array.from(
    { length: 8 },
    (_, i): Vector => [x + (i & 1 ? w : 0), y + (i & 2 ? d : 0), z + (i & 4 ? h : 0)],
  );
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ] as const;
  return {
    points,
    faces: quads.flatMap(([a, b, c, d]): Vector[] => [
      [a, b, c],
      [a, c, d],
    ]),
  };
}

/** A regular tetrahedron in a cube of edge a: edge a sqrt 2. */
export const tetrahedron = (a: number): Solid => ({
  points: [
    [0, 0, 0],
    [a, a, 0],
    [a, 0, a],
    [0, a, a],
  ],
  faces: [
    [0, 1, 2],
    [0, 3, 1],
    [0, 2, 3],
    [1, 3, 2],
  ],
});

/** A regular octahedron with corners at a distance r from the middle. */
export const octahedron = (r: number): Solid => ({
  points: [
    [r, 0, 0],
    [-r, 0, 0],
    [0, r, 0],
    [0, -r, 0],
    [0, 0, r],
    [0, 0, -r],
  ],
  faces: [
    [0, 2, 4],
    [2, 1, 4],
    [1, 3, 4],
    [3, 0, 4],
    [2, 0, 5],
    [1, 2, 5],
    [3, 1, 5],
    [0, 3, 5],
  ],
});

/** A sphere of radius r in n belts of 2 n pieces. */
export function sphere(r: number, n: number): Solid {
  const points: Vector[] = [[0, 0, r]];
  for (let i = 1; i < n; i++)
    for (let j = 0; j < 2 * n; j++) {
      const [t, p] = [(Math.PI * i) / n, (Math.PI * j) / n];
      points.push([r * Math.sin(t) * Math.cos(p), r * Math.sin(t) * Math.sin(p), r * Math.cos(t)]);
    }
  points.push([0, 0, -r]);
  const at = (i: number, j: number): number =>
    i === 0 ? 0 : i === n ? points.length - 1 : 1 + (i - 1) * 2 * n + (j % (2 * n));
  const faces: Vector[] = [];
  for (let i = 0; i < n; i++)
    for (let j = 0; j < 2 * n; j++) {
      if (i > 0) faces.push([at(i, j), at(i + 1, j), at(i, j + 1)]);
      if (i < n - 1) faces.push([at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
    }
  return { points, faces };
}

/** A torus of radii R and r in n by n pieces. */
export function torus(R: number, r: number, n: number): Solid {
  const points: Vector[] = [];
  const faces: Vector[] = [];
  const at = (i: number, j: number): number => (i % n) * n + (j % n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const [u, v] = [(2 * Math.PI * i) / n, (2 * Math.PI * j) / n];
      const out = R + r * Math.cos(v);
      points.push([out * Math.cos(u), out * Math.sin(u), r * Math.sin(v)]);
      faces.push([at(i, j), at(i + 1, j), at(i + 1, j + 1)], [at(i, j), at(i + 1, j + 1), at(i, j + 1)]);
    }
  return { points, faces };
}

/** The solid with every place changed. */
export const mapped = (solid: Solid, change: (p: Vector) => Vector): Solid => ({
  points: solid.points.map(change),
  faces: solid.faces,
});

export const moved = (solid: Solid, [x, y, z]: Vector): Solid =>
  mapped(solid, (p) => [p[0] + x, p[1] + y, p[2] + z]);

export const scaled = (solid: Solid, s: number): Solid =>
  mapped(solid, (p) => [p[0] * s, p[1] * s, p[2] * s]);

/** The rotation of the quaternion 1 + 2i + 3j + 4k, times 15: whole numbers in, whole numbers out. */
export const rotated15 = (solid: Solid): Solid =>
  mapped(solid, ([x, y, z]) => [-10 * x + 2 * y + 11 * z, 10 * x - 5 * y + 10 * z, 5 * x + 14 * y + 2 * z]);

/** Every triangle the other way round. */
export const insideOut = (solid: Solid): Solid => ({
  points: solid.points,
  faces: solid.faces.map(([a, b, c]) => [a, c, b]),
});

/** Solids in one file, nothing joined. */
export const together = (...solids: Solid[]): Solid => ({
  points: solids.flatMap((s) => s.points),
  faces: solids.flatMap((s, n) => {
    const before = solids.slice(0, n).reduce((sum, one) => sum + one.points.length, 0);
    return s.faces.map(([a, b, c]): Vector => [a + before, b + before, c + before]);
  }),
});
