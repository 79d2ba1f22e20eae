import { strToU8, zipSync } from "fflate";
import type { Solid } from "./solids.js";

const cornersOf = (solid: Solid): number[][][] =>
  solid.faces.map((face) => face.map((corner) => solid.points[corner]!));

/** Bytes of a binary STL. */
export function binaryStl(solid: Solid, header = "a model"): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(84 + 50 * solid.faces.length);
  bytes.set(strToU8(header.slice(0, 80)));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, solid.faces.length, true);
  cornersOf(solid).forEach((corners, t) => {
    corners.flat().forEach((x, i) => {
      view.setFloat32(84 + 50 * t + 12 + 4 * i, x, true);
    });
  });
  return bytes;
}

/** Text of an STL. */
export const asciiText = (solid: Solid, name = "a model"): string =>
  [
    `solid ${name}`,
    ...cornersOf(solid).map(
      (corners) =>
        `  facet normal 0 0 0\n    outer loop\n${corners.map((p) => `      vertex ${p.join(" ")}\n`).join("")}    endloop\n  endfacet`,
    ),
    `endsolid ${name}`,
    "",
  ].join("\n");

export const asciiStl = (solid: Solid): Uint8Array => strToU8(asciiText(solid));

const schemas = "http://schemas.example";
export const coreNamespace = `${schemas}/3dmanufacturing/core/2015/02`;
export const productionNamespace = `${schemas}/3dmanufacturing/production/2015/06`;

/** The mesh element of a solid. */
export const meshXml = (solid: Solid): string =>
  `<mesh><vertices>\n${solid.points.map(([x, y, z]) => `<vertex x="${x}" y="${y}" z="${z}"/>\n`).join("")}</vertices><triangles>\n${solid.faces.map(([a, b, c]) => `<triangle v1="${a}" v2="${b}" v3="${c}"/>\n`).join("")}</triangles></mesh>`;

/** A model element around resources and a build. */
export const modelXml = (resources: string, build: string, attributes = 'unit="millimeter"'): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<model xmlns="${coreNamespace}" ${attributes}>\n<resources>\n${resources}\n</resources>\n<build>\n${build}\n</build>\n</model>\n`;

export const relationships = (target = "/3D/part.model"): string =>
  `<?xml version="1.0"?>\n<Relationships xmlns="${schemas}/package/2006/relationships"><Relationship Target="${target}" Id="r0" Type="${schemas}/3dmanufacturing/2013/01/3dmodel"/></Relationships>`;

/** Bytes of a package with the given parts; a part left out is not there. */
export const archive = (parts: Record<string, string | Uint8Array>): Uint8Array<ArrayBuffer> =>
  zipSync(
    Object.fromEntries(
      Object.entries(parts).map(([name, part]) => [name, typeof part === "string" ? strToU8(part) : part]),
    ),
  ) as Uint8Array<ArrayBuffer>;

/** Bytes of a 3MF file around a model text. */
export const packed = (model: string): Uint8Array<ArrayBuffer> =>
  archive({ "[Content_Types].xml": "<Types/>", "_rels/.rels": relationships(), "3D/part.model": model });

/** Bytes of a 3MF file of one solid. */
export const threeMf = (solid: Solid): Uint8Array<ArrayBuffer> =>
  packed(modelXml(`<object id="1" type="model">${meshXml(solid)}</object>`, '<item objectid="1"/>'));

export const allForms = { "stl-binary": binaryStl, "stl-ascii": asciiStl, "3mf": threeMf } as const;
