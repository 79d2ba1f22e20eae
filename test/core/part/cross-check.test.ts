import Module, { type Manifold } from "manifold-3d";
import { expect, test } from "vitest";
import { measured, near } from "./tools/expecting.js";
import { allForms, binaryStl } from "./tools/files.js";
import type { Solid, Vector } from "./tools/solids.js";

const library = await Module();
library.setup();

/** The surface of a shape of the library, in its float32 coordinates. */
function solidOf(shape: Manifold): Solid {
  const { numProp, vertProperties, triVerts } = shape.getMesh();
  const points = Array.from(
    { length: vertProperties.length / numProp },
    (_, i): Vector => [...vertProperties.slice(numProp * i, numProp * i + 3)] as Vector,
  );
  const faces = Array.from(
    { length: triVerts.length / 3 },
    (_, t): Vector => [...triVerts.slice(3 * t, 3 * t + 3)] as Vector,
  );
  return { points, faces };
}

/** A block with three holes through it that meet in its middle, turned out of the axes. */
function holedBlock(): Manifold {
  const { Manifold: shapes } = library;
  const drill = shapes.cylinder(60, 7, 7, 48, true);
  return shapes
    .cube([40, 30, 24], true)
    .subtract(drill)
    .subtract(drill.rotate([90, 0, 0]))
    .subtract(drill.rotate([0, 90, 0]).translate([0, 2, 1]))
    .rotate([17, 31, 5])
    .translate([120, -40, 60]);
}

for (const [form, write] of Object.entries(allForms))
  test(`measureMesh agrees with a mesh library on a block with holes from ${form}, to what float32 holds`, async () => {
    const shape = holedBlock();
    expect(shape.genus()).toBe(5);
    const found = await measured(write(solidOf(shape)));
    near(found.areaCm2, shape.surfaceArea() / 100, 1e-6);
    near(found.volumeCm3, shape.volume() / 1000, 1e-6);
    expect(found).toMatchObject({ closed: true, shells: 1, triangles: shape.numTri() });
    const { min, max } = shape.boundingBox();
    for (const axis of [0, 1, 2]) near(found.boxMm[axis]!, max[axis]! - min[axis]!, 1e-5);
  });

test("cutting a block with holes by a plane adds exactly twice the area that the library gives for its slice", async () => {
  const shape = holedBlock().translate([0, 0, -60]);
  for (const height of [-9.3, 0.7, 6.1]) {
    const [above, below] = shape.splitByPlane([0, 0, 1], height);
    const parts = [
      await measured(binaryStl(solidOf(above))),
      await measured(binaryStl(solidOf(below))),
    ] as const;
    const cut = shape.slice(height).area();
    near(parts[0].areaCm2 + parts[1].areaCm2, (shape.surfaceArea() + 2 * cut) / 100, 1e-6);
    near(parts[0].volumeCm3 + parts[1].volumeCm3, shape.volume() / 1000, 1e-6);
    expect(parts.map((part) => part.closed)).toEqual([true, true]);
  }
});
