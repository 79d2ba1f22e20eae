import { expect, test } from "vitest";
import { readThreeMf } from "../../../../src/core/part/three-mf/three-mf.js";
import { measured, near } from "../tools/expecting.js";
import { archive, meshXml, modelXml, packed, productionNamespace, relationships } from "../tools/files.js";
import { box, octahedron } from "../tools/solids.js";

const block = meshXml(box([0, 0, 0], [2, 3, 5]));
const object = (id: number, inner: string, type = "model"): string =>
  `<object id="${id}" type="${type}">${inner}</object>`;
const components = (...list: string[]): string => `<components>${list.join("")}</components>`;

test("measureMesh converts every unit of a 3MF file to centimetres", async () => {
  const mmPerUnit = { micron: 1e-3, millimeter: 1, centimeter: 10, inch: 25.4, foot: 304.8, meter: 1000 };
  for (const [unit, mm] of Object.entries(mmPerUnit)) {
    const found = await measured(
      packed(modelXml(object(1, block), '<item objectid="1"/>', `unit="${unit}"`)),
    );
    near(found.volumeCm3, (30 * mm ** 3) / 1000);
    near(found.areaCm2, (62 * mm ** 2) / 100);
    near(found.boxMm[2], 5 * mm);
  }
});

test("measureMesh takes millimetres where a 3MF file names no unit", async () => {
  const found = await measured(packed(modelXml(object(1, block), '<item objectid="1"/>', "")));
  near(found.volumeCm3, 0.03);
  expect(found.unit).toBe("mm");
});

test("measureMesh keeps the unit that a 3MF file names, and says that another was not used", async () => {
  const found = await measured(packed(modelXml(object(1, block), '<item objectid="1"/>')), { unit: "inch" });
  near(found.volumeCm3, 0.03);
  expect(found.codes).toEqual(["mesh-unit"]);
});

test("measureMesh applies the transform of a build item: rotated, scaled by 15, moved", async () => {
  const m = "-10 10 5 2 -5 14 11 10 2 1000 -2000 3000";
  const found = await measured(packed(modelXml(object(1, block), `<item objectid="1" transform="${m}"/>`)));
  near(found.volumeCm3, 30 * 15 ** 3 * 1e-3);
  near(found.areaCm2, 62 * 15 ** 2 * 1e-2);
  // The corners of the box, each row of the matrix times its edge: spans of x, y and z.
  expect(found.boxMm).toEqual([20 + 6 + 55, 20 + 15 + 50, 10 + 42 + 10]);
  expect(found.codes).toEqual([]);
});

test("measureMesh turns a mirrored object, so that its volume stays positive", async () => {
  const found = await measured(
    packed(modelXml(object(1, block), '<item objectid="1" transform="-1 0 0 0 1 0 0 0 1 0 0 0"/>')),
  );
  near(found.volumeCm3, 0.03);
  expect(found.codes).toEqual([]);
});

test("measureMesh follows components through their transforms and adds several objects", async () => {
  const inner = object(2, components('<component objectid="1" transform="2 0 0 0 2 0 0 0 2 0 0 0"/>'));
  const outer = object(
    3,
    components(
      '<component objectid="2" transform="1 0 0 0 1 0 0 0 1 100 0 0"/>',
      '<component objectid="1"/>',
    ),
  );
  const build = '<item objectid="3" transform="3 0 0 0 3 0 0 0 3 0 0 0"/><item objectid="4"/>';
  const four = object(4, meshXml(octahedron(4)));
  const found = await measured(packed(modelXml(object(1, block) + inner + outer + four, build)));
  near(found.volumeCm3, (30 * 6 ** 3 + 30 * 3 ** 3 + (4 / 3) * 64) / 1000);
  near(found.areaCm2, (62 * 36 + 62 * 9 + 64 * Math.sqrt(3)) / 100);
  // From the octahedron at x = -4 to the inner box, moved by 100 and then all scaled by 3.
  near(found.boxMm[0], 3 * (100 + 4) + 4);
  expect(found).toMatchObject({ shells: 3, closed: true, triangles: 32 });
});

test("measureMesh leaves support structures out and says so", async () => {
  const model = modelXml(
    object(1, block) + object(2, block, "support"),
    '<item objectid="1"/><item objectid="2"/>',
  );
  const found = await measured(packed(model));
  near(found.volumeCm3, 0.03);
  expect(found.codes).toEqual(["mesh-support"]);
});

const production = `xmlns:p="${productionNamespace}" requiredextensions="p"`;
const twoParts = archive({
  "_rels/.rels": relationships(),
  "3D/part.model": modelXml(
    object(1, components('<component objectid="7" p:path="/3D/Objects/one.model"/>')),
    '<item objectid="1"/>',
    production,
  ),
  "3D/Objects/one.model": modelXml(object(7, block), ""),
});

test("measureMesh reads objects in another part of the package", async () => {
  near((await measured(twoParts)).volumeCm3, 0.03);
});

test("readThreeMf bounds what all parts unpack to together", async () => {
  const outcome = await readThreeMf(twoParts, 1000);
  expect(outcome.faults.map((f) => f.message)).toEqual([
    "line 4 of 3D/part.model: the parts unpack to over 1000 bytes",
  ]);
  expect((await readThreeMf(twoParts, 10_000)).ok).toBe(true);
});

test("measureMesh reads a model with prefixed names, in UTF-16, with CDATA, comments and foreign elements", async () => {
  const text = modelXml(object(1, block), '<item objectid="1"/>', 'xmlns:q="urn:other"')
    .replace("<build>", "<!-- <item/> --><q:build><q:item/></q:build><build>")
    .replace(
      /<(\/?)(model|object|mesh|vertices|vertex|triangles|triangle|build|item|resources)\b/g,
      "<$1m:$2",
    )
    .replace("xmlns=", "xmlns:m=");
  const wide = new Uint8Array(2 + 2 * text.length);
  wide.set([0xff, 0xfe]);
  [...text].forEach((c, i) => {
    wide[2 + 2 * i] = c.charCodeAt(0);
  });
  for (const part of [text, wide]) {
    const found = await measured(
      archive({ "_rels/.rels": relationships("3D/part.model"), "3D/part.model": part }),
    );
    near(found.volumeCm3, 0.03);
  }
});
