import { expect, test } from "vitest";
import { volumeDoubted, volumeDoubts } from "../../../../src/core/part/mesh-warnings.js";
import type { SurfaceSums } from "../../../../src/core/part/sums.js";
import { sumsOfGroups } from "../../../../src/core/part/surface/groups.js";
import { topologyWithin } from "../../../../src/core/part/surface/topology.js";
import { readThreeMf } from "../../../../src/core/part/three-mf/three-mf.js";
import { measured, near } from "../tools/expecting.js";
import { asciiStl, binaryStl, meshXml, modelXml, packed } from "../tools/files.js";
import { box, insideOut, moved, scaled, sphere, together, torus, type Vector } from "../tools/solids.js";

const block = box([0, 0, 0], [2, 3, 5]);

test("measureMesh says that an open surface is open, and where", async () => {
  const open = { ...block, faces: block.faces.slice(1) };
  const found = await measured(binaryStl(open));
  expect(found).toMatchObject({ closed: false, openEdges: 3 });
  expect(found.codes).toEqual(["mesh-open"]);
  expect(found.faults[0]!.message).toBe(
    "the surface is open at 3 edges, one at 0, 0, 0 mm: the volume is not to be trusted",
  );
});

test("measureMesh tells triangles that face the wrong way from holes", async () => {
  const [first, ...rest] = block.faces;
  const turned = { ...block, faces: [[first![0], first![2], first![1]] as Vector, ...rest] };
  const found = await measured(binaryStl(turned));
  expect(found).toMatchObject({ closed: false, openEdges: 3 });
  expect(found.codes).toEqual(["mesh-turned"]);
});

test("measureMesh says that a solid is inside out and gives its volume without sign", async () => {
  const found = await measured(binaryStl(insideOut(block)));
  near(found.volumeCm3, 0.03);
  expect(found.codes).toEqual(["mesh-inverted"]);
  expect(found.closed).toBe(true);
});

test("measureMesh counts triangles without area and takes the solid as closed", async () => {
  // A needle along one edge, and a triangle shrunk to a point.
  const [a, b] = block.faces[0]!;
  const flat = { ...block, faces: [...block.faces, [a, b, a] as Vector, [b, b, b] as Vector] };
  const found = await measured(binaryStl(flat));
  expect(found).toMatchObject({ closed: true, flatTriangles: 2, triangles: 14 });
  expect(found.codes).toEqual(["mesh-flat"]);
  near(found.volumeCm3, 0.03);
});

test("measureMesh asks about the unit of a box over 1 m or under 1 mm", async () => {
  const codes = async (mm: number) => (await measured(binaryStl(scaled(block, mm / 5)))).codes;
  expect([await codes(1001), await codes(999)]).toEqual([["mesh-unit"], []]);
  expect([await codes(0.99), await codes(1.01)]).toEqual([["mesh-unit"], []]);
  expect((await measured(binaryStl(scaled(block, 0.1)), { unit: "inch" })).codes).toEqual([]);
});

test("measureMesh closes a surface whose corners miss each other by rounding, and says so", async () => {
  const shaken = torus(20, 6, 24);
  const loose = {
    points: shaken.faces.flatMap((face, t) =>
      face.map((corner, i): Vector => {
        const shake = (((t * 3 + i) % 7) - 3) * 1e-6;
        return shaken.points[corner]!.map((x) => x + shake) as Vector;
      }),
    ),
    faces: shaken.faces.map((_, t): Vector => [3 * t, 3 * t + 1, 3 * t + 2]),
  };
  const found = await measured(asciiStl(loose));
  expect(found).toMatchObject({ closed: true, shells: 1 });
  expect(found.openEdges).toBeGreaterThan(100);
  expect(found.codes).toEqual(["mesh-welded"]);
});

test("measureMesh counts separate shells without a warning, even in one another's box", async () => {
  const ring = torus(20, 3, 32);
  const found = await measured(binaryStl(together(ring, sphere(5, 8), moved(block, [50, 0, 0]))));
  expect(found).toMatchObject({ shells: 3, closed: true });
  expect(found.codes).toEqual([]);
});

const overlapping = {
  "cross through each other, no corner of one inside the other": together(
    box([-10, -1, -1], [20, 2, 2]),
    box([-2, -10, -2], [4, 20, 4]),
  ),
  "share part of their space, faces in one plane": together(
    box([0, 0, 0], [4, 4, 4]),
    box([2, 0, 0], [4, 4, 3]),
  ),
  "stand one inside the other": together(sphere(10, 8), moved(block, [1, 1, 1])),
};
for (const [how, solid] of Object.entries(overlapping))
  test(`measureMesh warns of two solids that ${how}`, async () => {
    const found = await measured(binaryStl(solid));
    expect(found.codes).toEqual(["mesh-overlap"]);
    expect(found.faults[0]!.message).toMatch(/^1 pair of shells overlap, the first shells 1 and 2/);
  });

test("measureMesh keeps apart the corners of bodies at the same place", async () => {
  const object = `<object id="1">${meshXml(sphere(5, 3))}</object>`;
  const found = await measured(packed(modelXml(object, '<item objectid="1"/>'.repeat(20))));
  expect(found).toMatchObject({ shells: 20, closed: true });
  expect(found.codes).toEqual(["mesh-doubled"]);
  const file = await readThreeMf(packed(modelXml(object, '<item objectid="1"/>'.repeat(20))));
  if (!file.ok) throw new Error("the file is good");
  for (const tolerance of [0, 1e-5]) {
    const topology = topologyWithin(file.value.triangles, tolerance);
    const sums = "code" in topology ? topology : sumsOfGroups(file.value.triangles, topology.shells);
    expect(sums).toHaveLength(20);
    for (const shell of sums as SurfaceSums[]) expect(shell.triangles).toBe(found.triangles / 20);
  }
});

test("measureMesh does not take solids that touch along an edge for overlapping", async () => {
  const object = `<object id="1">${meshXml(block)}</object>`;
  const beside = '<item objectid="1"/><item objectid="1" transform="1 0 0 0 1 0 0 0 1 2 3 0"/>';
  const found = await measured(packed(modelXml(object, beside)));
  expect(found).toMatchObject({ shells: 2, closed: true, areaTrusted: true, codes: [] });
});

test("measureMesh takes a shell that faces inwards within a solid for a closed cavity", async () => {
  const hollow = together(box([0, 0, 0], [10, 10, 10]), insideOut(moved(block, [3, 3, 3])));
  const found = await measured(binaryStl(hollow));
  near(found.volumeCm3, 0.97);
  near(found.areaCm2, 6.62);
  expect(found.cavities.count).toBe(1);
  near(found.cavities.areaCm2, 0.62);
  near(found.cavities.volumeCm3, 0.03);
  expect(found.codes).toEqual(["mesh-cavity"]);
  const island = together(hollow, moved(scaled(block, 0.25), [3.5, 3.5, 3.5]));
  expect((await measured(binaryStl(island))).codes).toEqual(["mesh-cavity"]);
  expect((await measured(binaryStl(insideOut(hollow)))).codes).toEqual(["mesh-inverted", "mesh-cavity"]);
});

test("measureMesh warns of a shell that faces inwards outside every solid", async () => {
  const found = await measured(
    binaryStl(together(box([0, 0, 0], [10, 10, 10]), insideOut(moved(block, [30, 3, 3])))),
  );
  expect(found.codes).toEqual(["mesh-shell-inverted"]);
  expect(found.faults[0]!.message).toMatch(/^1 shell of 2 inside out/);
});

test("measureMesh trusts no volume of a surface that is open, turned in places or has a shell inside out, and says so in as many words", async () => {
  const [first, ...rest] = block.faces;
  const solids = {
    trusted: [block, insideOut(block), together(block, insideOut(moved(scaled(block, 0.25), [1, 1, 1])))],
    doubted: [
      { ...block, faces: rest },
      { ...block, faces: [[first![0], first![2], first![1]] as Vector, ...rest] },
      together(block, insideOut(moved(block, [30, 3, 3]))),
    ],
  };
  for (const [word, list] of Object.entries(solids))
    for (const solid of list) {
      const { volumeTrusted, codes, faults } = await measured(binaryStl(solid));
      expect(volumeTrusted).toBe(word === "trusted");
      expect(codes.some((code) => volumeDoubts.includes(code))).toBe(!volumeTrusted);
      expect(faults.some(({ message }) => message.endsWith(volumeDoubted))).toBe(!volumeTrusted);
    }
});

test("measureMesh says that it did not examine shells that are too many", async () => {
  const nest = together(...Array.from({ length: 110 }, (_, i) => sphere(10 + i / 10, 4)));
  expect((await measured(binaryStl(nest))).codes).toEqual(["mesh-overlap-unknown"]);
});
