import fc from "fast-check";
import { expect, test } from "vitest";
import { cutConvex } from "./tools/cut.js";
import { measured, near } from "./tools/expecting.js";
import { asciiStl, threeMf } from "./tools/files.js";
import {
  box,
  mapped,
  octahedron,
  type Solid,
  scaled,
  sphere,
  tetrahedron,
  torus,
  type Vector,
} from "./tools/solids.js";

const convex = fc.constantFrom<Solid>(
  box([-3, -4, -5], [6, 8, 10]),
  octahedron(5),
  sphere(6, 7),
  mapped(tetrahedron(8), ([x, y, z]): Vector => [x - 4, y - 4, z - 4]),
);
const number = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const direction = fc.tuple(number(-1, 1), number(-1, 1), number(-1, 1)).filter((n) => Math.hypot(...n) > 0.1);

test("cutting a convex solid in two adds exactly twice the cut area, and keeps the volume", async () => {
  await fc.assert(
    fc.asyncProperty(convex, direction, number(-0.5, 0.5), async (solid, normal, offset) => {
      const { above, below, areaMm2 } = cutConvex(solid, normal, offset);
      const whole = await measured(asciiStl(solid));
      const parts = [await measured(asciiStl(above)), await measured(asciiStl(below))] as const;
      expect(parts.map((p) => p.closed)).toEqual([true, true]);
      near(parts[0].areaCm2 + parts[1].areaCm2, whole.areaCm2 + (2 * areaMm2) / 100);
      near(parts[0].volumeCm3 + parts[1].volumeCm3, whole.volumeCm3);
    }),
    { numRuns: 200, seed: 5 },
  );
});

test("scaling a solid by s scales area by s squared and volume by s cubed", async () => {
  const solids = fc.constantFrom(torus(9, 3, 11), sphere(6, 7), box([1, 2, 3], [4, 5, 6]));
  await fc.assert(
    fc.asyncProperty(
      solids,
      number(0.01, 100),
      fc.constantFrom(asciiStl, threeMf),
      async (solid, s, write) => {
        const one = await measured(write(solid));
        const other = await measured(write(scaled(solid, s)));
        near(other.areaCm2, one.areaCm2 * s ** 2);
        near(other.volumeCm3, one.volumeCm3 * s ** 3);
        expect(other.closed).toBe(true);
      },
    ),
    { numRuns: 100, seed: 6 },
  );
});
