import { describe, expect, test } from "vitest";
import { wettedCm2 } from "../../../../src/core/part/wetted.js";
import { measured, near } from "../tools/expecting.js";
import { allForms, meshXml, modelXml, packed } from "../tools/files.js";
import {
  box,
  insideOut,
  mapped,
  moved,
  rotated15,
  type Solid,
  scaled,
  sphere,
  tetrahedron,
  together,
  torus,
  type Vector,
} from "../tools/solids.js";

/** A 3MF file that places solids as objects of their own. */
const placed = (...solids: readonly Solid[]) =>
  packed(
    modelXml(
      solids.map((solid, i) => `<object id="${i + 1}">${meshXml(solid)}</object>`).join(""),
      solids.map((_, i) => `<item objectid="${i + 1}"/>`).join(""),
    ),
  );
const forms: Record<string, (...solids: readonly Solid[]) => Uint8Array> = {
  "stl-binary": (...solids) => allForms["stl-binary"](together(...solids)),
  "stl-ascii": (...solids) => allForms["stl-ascii"](together(...solids)),
  "3mf as one object": (...solids) => allForms["3mf"](together(...solids)),
  "3mf as objects": placed,
};

/** The same surface with its triangles, and the corners of each, in another order. */
const shuffled = ({ points, faces }: Solid): Solid => ({
  points,
  faces: faces
    .map(([a, b, c], t): Vector => (t % 3 === 0 ? [a, b, c] : t % 3 === 1 ? [b, c, a] : [c, a, b]))
    .sort(([a, b], [c, d]) => ((a * 7 + b * 3) % 11) - ((c * 7 + d * 3) % 11)),
});

/** A box whose faces are cut along the other diagonal. */
const otherDiagonals = (solid: Solid): Solid => {
  const faces: Vector[] = [];
  for (let t = 0; t < solid.faces.length; t += 2) {
    const [a, b, c] = solid.faces[t]!;
    const d = solid.faces[t + 1]![2];
    faces.push([b, c, d], [b, d, a]);
  }
  return { points: solid.points, faces };
};

const bodies: Record<string, Solid> = {
  box: box([0, 0, 0], [2, 3, 5]),
  "box off the axes": rotated15(box([1, 2, 3], [2, 3, 5])),
  torus: torus(20, 6, 12),
};

for (const [form, write] of Object.entries(forms))
  describe(`measureMesh of ${form}`, () => {
    for (const [name, solid] of Object.entries(bodies))
      test.each([2, 3])(`says that a ${name} is there %i times, and trusts no figure`, async (times) => {
        const copies = Array.from({ length: times }, (_, i) => (i % 2 === 0 ? solid : shuffled(solid)));
        const [one, found] = [await measured(write(solid)), await measured(write(...copies))];
        expect(one).toMatchObject({ codes: [], areaTrusted: true, volumeTrusted: true });
        expect(found).toMatchObject({ closed: true, areaTrusted: false, volumeTrusted: false });
        expect(found.codes).toEqual(["mesh-doubled"]);
        near(found.coincident.doubledCm2, times * one.areaCm2, 1e-6);
        expect(found.coincident.sharedCm2).toBe(0);
      });

    test("says that one body of several is there twice", async () => {
      const far = moved(box([0, 0, 0], [4, 4, 4]), [40, 0, 0]);
      const found = await measured(write(bodies.torus!, far, shuffled(far)));
      expect(found.codes).toEqual(["mesh-doubled"]);
      near(found.coincident.doubledCm2, 1.92, 1e-6);
      expect(found.faults[0]!.message).toMatch(
        /^1.92 of [\d.]+ cm2 of the surface belong to bodies that lie/,
      );
    });

    test("leaves the face that two boxes share out of what is wetted, and trusts their volume", async () => {
      const [left, right] = [box([0, 0, 0], [2, 3, 5]), box([2, 0, 0], [4, 3, 5])];
      for (const beside of [right, shuffled(right), otherDiagonals(right)])
        for (const place of [(solid: Solid) => solid, rotated15]) {
          const found = await measured(write(place(left), place(beside)));
          const scale = place === rotated15 ? 15 : 1;
          expect(found.codes).toEqual(["mesh-shared-face"]);
          expect(found).toMatchObject({ areaTrusted: false, volumeTrusted: true });
          near(found.coincident.sharedCm2, 0.3 * scale ** 2, 1e-6);
          near(wettedCm2(found), 1.26 * scale ** 2, 1e-6);
          near(found.volumeCm3, 0.09 * scale ** 3);
        }
    });

    test("finds the foot of a small box on a large one, also where they have a corner in common", async () => {
      const plate = box([0, 0, 0], [20, 20, 2]);
      for (const at of [
        [7, 5, 2],
        [0, 0, 2],
      ] as Vector[]) {
        const found = await measured(write(plate, box(at, [3, 4, 6])));
        expect(found.codes).toEqual(["mesh-shared-face"]);
        near(found.coincident.sharedCm2, 0.24, 1e-6);
        near(wettedCm2(found), (2 * 400 + 4 * 40 + 2 * 7 * 6) / 100, 1e-6);
      }
    });

    test("says nothing of bodies that touch at an edge or a corner, or are near each other", async () => {
      const one = box([0, 0, 0], [2, 3, 5]);
      for (const other of [
        box([2, 3, 0], [1, 1, 1]),
        box([2, 3, 5], [1, 1, 1]),
        box([2.001, 0, 0], [2, 3, 5]),
      ])
        expect((await measured(write(one, other))).codes).toEqual([]);
    });

    test("says that a body and the same one inside out leave nothing to measure", async () => {
      const found = await measured(write(bodies.torus!, insideOut(shuffled(bodies.torus!))));
      expect(found).toMatchObject({ areaTrusted: false, volumeTrusted: false });
      expect(found.codes).toContain("mesh-doubled");
    });
  });

test("measureMesh says that one object is placed twice at the same place", async () => {
  const object = `<object id="1">${meshXml(sphere(5, 8))}</object>`;
  const place = 'transform="0 1 0 -1 0 0 0 0 1 7 8 9"';
  const item = `<item objectid="1" ${place}/>`;
  const found = await measured(packed(modelXml(object, item + item)));
  expect(found.codes).toEqual(["mesh-doubled"]);
  expect(found.shells).toBe(2);
});

test("measureMesh says of two bodies that overlap with faces in one plane that they overlap", async () => {
  const found = await measured(placed(box([0, 0, 0], [4, 4, 4]), box([2, 0, 0], [4, 4, 3])));
  expect(found.codes).toEqual(["mesh-overlap"]);
});

test("measureMesh takes two bodies of one box, area and volume that cross for overlapping", async () => {
  const one = tetrahedron(8);
  const other = mapped(one, ([x, y, z]): Vector => [8 - x, 8 - y, 8 - z]);
  const found = await measured(placed(one, insideOut(other)));
  expect(found.codes).toEqual(["mesh-overlap"]);
});

test("measureMesh takes a cavity that another body fills for a face between bodies", async () => {
  const [block, core] = [box([0, 0, 0], [10, 10, 10]), box([3, 3, 3], [2, 3, 5])];
  const found = await measured(placed(together(block, insideOut(core)), shuffled(core)));
  expect(found.codes).toEqual(["mesh-shared-face"]);
  near(wettedCm2(found), 6, 1e-9);
  near(found.volumeCm3, 1, 1e-9);
});

test("contact is said from a thousandth of the area on", async () => {
  const plate = box([0, 0, 0], [20, 20, 2]);
  const foot = async (side: number) => measured(placed(plate, box([1, 1, 2], [side, side, 1e-3])));
  // Both sides of the foot count, over 960 mm2.
  expect((await foot(Math.sqrt(0.479))).codes).toEqual([]);
  expect((await foot(Math.sqrt(0.482))).codes).toEqual(["mesh-shared-face"]);
});

test("contact is that of faces within a millionth of the largest coordinate", async () => {
  const beside = async (gap: number) =>
    measured(placed(box([0, 0, 0], [4, 4, 4]), moved(box([0, 0, 0], [6, 4, 4]), [4 + gap, 0, 0])));
  expect((await beside(9e-6)).codes).toEqual(["mesh-shared-face"]);
  expect((await beside(11e-6)).codes).toEqual([]);
});

test("two scales of one body inside each other are no contact", async () => {
  const found = await measured(placed(scaled(bodies.box!, 3), moved(scaled(bodies.box!, 1), [2, 3, 5])));
  expect(found.codes).toEqual(["mesh-overlap"]);
});
