import { strToU8 } from "fflate";
import { expect, test } from "vitest";
import { addTriangles, noSums } from "../../../src/core/part/sums.js";
import { measured, near } from "./tools/expecting.js";
import { allForms, asciiText } from "./tools/files.js";
import {
  box,
  moved,
  octahedron,
  rotated15,
  type Solid,
  scaled,
  sphere,
  tetrahedron,
  torus,
} from "./tools/solids.js";

// Whole numbers throughout, so that float32 holds every coordinate exactly.
const known: { name: string; solid: Solid; areaMm2: number; volumeMm3: number }[] = [
  { name: "box", solid: box([0, 0, 0], [2, 3, 5]), areaMm2: 62, volumeMm3: 30 },
  { name: "tetrahedron", solid: tetrahedron(6), areaMm2: Math.sqrt(3) * 72, volumeMm3: 72 },
  { name: "octahedron", solid: octahedron(4), areaMm2: Math.sqrt(3) * 64, volumeMm3: (4 / 3) * 64 },
];
const changes: { name: string; change: (solid: Solid) => Solid; scale: number }[] = [
  { name: "as drawn", change: (s) => s, scale: 1 },
  { name: "moved far off", change: (s) => moved(s, [8_000_000, -7_000_001, 5_000_003]), scale: 1 },
  { name: "rotated and scaled by 15", change: rotated15, scale: 15 },
  { name: "scaled by 1/8", change: (s) => scaled(s, 1 / 8), scale: 1 / 8 },
  {
    name: "scaled by 7, rotated and moved far off",
    change: (s) => moved(rotated15(scaled(s, 7)), [1_000_003, 2_000_005, -3_000_001]),
    scale: 105,
  },
];

for (const [form, write] of Object.entries(allForms))
  for (const { name, solid, areaMm2, volumeMm3 } of known)
    for (const { name: how, change, scale } of changes)
      test(`measureMesh returns area and volume of a ${name} ${how} from ${form} to 1e-9`, async () => {
        const found = await measured(write(change(solid)));
        near(found.areaCm2, (areaMm2 * scale ** 2) / 100);
        near(found.volumeCm3, (volumeMm3 * scale ** 3) / 1000);
        near(found.massG, (0.93 * volumeMm3 * scale ** 3) / 1000);
        expect(found).toMatchObject({ format: form, closed: true, shells: 1, openEdges: 0, unit: "mm" });
        expect(found.codes.filter((code) => code !== "mesh-unit")).toEqual([]);
        expect(found.triangles).toBe(solid.faces.length);
      });

const round: { name: string; make: (n: number) => Solid; areaMm2: number; volumeMm3: number }[] = [
  {
    name: "sphere",
    make: (n) => sphere(12, n),
    areaMm2: 4 * Math.PI * 144,
    volumeMm3: (4 / 3) * Math.PI * 1728,
  },
  {
    name: "torus",
    make: (n) => torus(20, 6, n),
    areaMm2: 4 * Math.PI ** 2 * 120,
    volumeMm3: 2 * Math.PI ** 2 * 720,
  },
];

for (const [form, write] of Object.entries(allForms))
  for (const { name, make, areaMm2, volumeMm3 } of round)
    test(`measureMesh nears area and volume of a ${name} with the square of the refinement from ${form}`, async () => {
      const errors = [];
      for (const n of [24, 48, 96]) {
        const found = await measured(write(moved(make(n), [100, -50, 30])));
        expect(found).toMatchObject({ closed: true, shells: 1 });
        errors.push([1 - (found.areaCm2 * 100) / areaMm2, 1 - (found.volumeCm3 * 1000) / volumeMm3]);
      }
      for (const which of [0, 1])
        for (const step of [0, 1]) {
          const order = Math.log2(errors[step]![which]! / errors[step + 1]![which]!);
          expect(order).toBeGreaterThan(1.97);
          expect(order).toBeLessThan(2.03);
        }
      expect(errors[2]![0]).toBeLessThan(2e-3);
    });

test("measureMesh returns the volume of a sphere far more than a billion times its size away from the origin, to 1e-9", async () => {
  // Moved there and back by powers of two, so that both have the same rounded shape.
  const far = moved(sphere(12, 24), [2 ** 40, -(2 ** 39), 2 ** 38]);
  const back = moved(far, [-(2 ** 40), 2 ** 39, -(2 ** 38)]);
  for (const write of [allForms["stl-ascii"], allForms["3mf"]])
    near((await measured(write(far))).volumeCm3, (await measured(write(back))).volumeCm3);
});

test("measureMesh takes -0 for 0 when it joins corners", async () => {
  const text = asciiText(box([0, 0, 0], [2, 3, 5]));
  let zeros = 0;
  const mixed = text.replace(/(?<=vertex.*) 0\b/g, () => (zeros++ % 2 === 0 ? " -0" : " 0"));
  expect(await measured(strToU8(mixed))).toMatchObject({ closed: true, openEdges: 0, shells: 1 });
});

test("addTriangles keeps what a plain sum would round off", () => {
  const chunk = new Float64Array(9 * 512);
  for (let t = 0; t < 512; t++) chunk.set([0, 0, 3, 2 ** -13, 0, 3, 0, 2 ** -14, 3], 9 * t);
  const sums = noSums();
  // The first corner is the apex; over it, a large triangle at a height of 3.
  addTriangles(sums, Float64Array.of(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 3, 2 ** 13, 0, 3, 0, 2 ** 13, 3), 2);
  for (let n = 0; n < 2048; n++) addTriangles(sums, chunk, 512);
  // 2^20 triangles of 2^-28: together 2^-8, each below the last digit of 2^25.
  expect(sums.area).toBe(2 ** 25 + 2 ** -8);
  expect(sums.volume).toBe(2 ** 25 + 2 ** -8);
});

test("measureMesh returns the box in millimetres and takes unit and density", async () => {
  const bytes = allForms["stl-binary"](box([1, 2, 3], [2, 3, 5]));
  expect((await measured(bytes)).boxMm).toEqual([2, 3, 5]);
  const inches = await measured(bytes, { unit: "inch", densityGPerCm3: 1.2 });
  near(inches.boxMm[2], 127);
  near(inches.volumeCm3, 30 * 2.54 ** 3);
  near(inches.areaCm2, 62 * 2.54 ** 2);
  near(inches.massG, 36 * 2.54 ** 3);
});
