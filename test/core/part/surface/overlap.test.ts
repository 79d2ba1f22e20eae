import fc from "fast-check";
import { expect, test } from "vitest";
import { addTriangles, noSums } from "../../../../src/core/part/sums.js";
import { surfacesCross } from "../../../../src/core/part/surface/cross.js";
import { gridOf } from "../../../../src/core/part/surface/grid.js";
import { relation } from "../../../../src/core/part/surface/overlap.js";
import { pierces } from "../../../../src/core/part/surface/pierce.js";
import { box, rotated15, type Solid } from "../tools/solids.js";

const trianglesOf = (solid: Solid): Float64Array =>
  Float64Array.from(solid.faces.flatMap((face) => face.flatMap((corner) => solid.points[corner]!)));

function relationOf(a: Solid, b: Solid): ReturnType<typeof relation> {
  const [first, second] = [trianglesOf(a), trianglesOf(b)];
  const [sumsA, sumsB] = [noSums(), noSums()];
  addTriangles(sumsA, first, a.faces.length);
  addTriangles(sumsB, second, b.faces.length);
  return relation(first, second, sumsA, sumsB);
}

test("relation returns apart exactly for boxes that share no space, touching ones included, in any position", () => {
  // Small whole numbers, so that faces, edges and corners often coincide.
  const interval = fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 1, max: 4 }));
  const intervals = fc.tuple(interval, interval, interval);
  const made = (of: [number, number][]): Solid =>
    box([of[0]![0], of[1]![0], of[2]![0]], [of[0]![1], of[1]![1], of[2]![1]]);
  let shared = 0;
  fc.assert(
    fc.property(intervals, intervals, fc.boolean(), (a, b, turn) => {
      const overlap = a.every(([from, length], k) => from < b[k]![0] + b[k]![1] && b[k]![0] < from + length);
      const place = turn ? rotated15 : (solid: Solid) => solid;
      if (overlap) shared++;
      expect(relationOf(place(made(a)), place(made(b))) !== "apart").toBe(overlap);
    }),
    { numRuns: 3000, seed: 4 },
  );
  expect(shared).toBeGreaterThan(500);
});

test("relation returns which of two boxes is inside the other one", () => {
  const [large, small] = [box([0, 0, 0], [9, 9, 9]), box([2, 3, 4], [1, 2, 3])];
  expect(relationOf(small, large)).toBe("a-in-b");
  expect(relationOf(large, small)).toBe("b-in-a");
});

test("surfacesCross returns what comparing every pair of triangles returns, and nothing beyond its bound", () => {
  const coordinate = fc.double({ min: 0, max: 10, noNaN: true });
  const soup = (size: number, most: number) =>
    fc
      .array(
        fc.tuple(coordinate, coordinate, coordinate, fc.array(coordinate, { minLength: 6, maxLength: 6 })),
        {
          minLength: 1,
          maxLength: most,
        },
      )
      .map((list) =>
        Float64Array.from(
          list.flatMap(([x, y, z, d]) => [
            ...[x, y, z],
            ...[x + d[0]! * size, y + d[1]! * size, z + d[2]! * size],
            ...[x + d[3]! * size, y + d[4]! * size, z + d[5]! * size],
          ]),
        ),
      );
  let crossing = 0;
  fc.assert(
    fc.property(soup(0.3, 4), soup(0.05, 60), (a, b) => {
      let expected = false;
      for (let i = 0; i < a.length; i += 9)
        for (let j = 0; j < b.length; j += 9) expected ||= pierces(a, i, b, j) || pierces(b, j, a, i);
      if (expected) crossing++;
      expect(surfacesCross(a, b, [0, 0, 0], [15, 15, 15], 1e6)).toBe(expected);
      expect(surfacesCross(a, b, [0, 0, 0], [15, 15, 15], 0)).toBeUndefined();
    }),
    { numRuns: 1000, seed: 9 },
  );
  expect(crossing).toBeGreaterThan(100);
  expect(crossing).toBeLessThan(900);
});

test("gridOf returns a coarse grid for boxes that fill the region, so that its tables stay small", () => {
  const count = 40_000;
  const bounds = Float64Array.from({ length: 6 * count }, (_, i) => (i % 6 < 3 ? 0 : 1));
  const grid = gridOf({ at: new Int32Array(count), bounds }, [0, 0, 0], [1, 1, 1]);
  expect(grid.boxes.length).toBeLessThanOrEqual(16 * count + 10_000);
  expect(grid.n).toBe(1);
});
