import { error, type Fault } from "../../fault.js";
import { chunkTriangles, type TriangleReader, type TriangleSource } from "../triangles.js";
import type { ModelObject, Placement } from "./package-model.js";
import { after, determinant, identity, type Transform } from "./transform.js";

/** A mesh where the build puts it. */
export interface PlacedMesh {
  readonly object: ModelObject;
  readonly transform: Transform;
}

/** Bounds of what components may multiply. */
const placementBounds = { depth: 32, placements: 100_000, triangles: 20_000_000 };

const help = "export the model again as plain 3MF or as STL";

/** Everything the build items put on the plate, components followed to their meshes. */
export function placeAll(
  objects: ReadonlyMap<string, ModelObject>,
  items: readonly Placement[],
): { readonly meshes: readonly PlacedMesh[]; readonly supports: number } | Fault {
  const meshes: PlacedMesh[] = [];
  let placements = 0;
  let triangles = 0;
  let supports = 0;
  const follow = (p: Placement, outer: Transform, path: readonly string[]): Fault | undefined => {
    const refuse = (code: string, message: string): Fault => error(code, [], `${p.where}: ${message}`, help);
    const object = objects.get(p.key);
    const id = p.key.slice(p.key.indexOf("#") + 1);
    if (object === undefined) return refuse("mesh-part-missing", `there is no object "${id}"`);
    if (path.includes(p.key)) return refuse("mesh-cycle", `object "${id}" holds itself as a component`);
    if (path.length >= placementBounds.depth)
      return refuse("mesh-too-large", `components are nested more than ${placementBounds.depth} deep`);
    triangles += object.triangleCount;
    if (++placements > placementBounds.placements || triangles > placementBounds.triangles)
      return refuse(
        "mesh-too-large",
        `components multiply to more than ${placementBounds.placements} objects or ${placementBounds.triangles} triangles`,
      );
    const transform = after(p.transform, outer);
    if (determinant(transform) === 0) return refuse("mesh-syntax", "a transform flattens the object");
    if (/support|^other$/.test(object.type)) {
      supports++;
      return undefined;
    }
    if (object.triangleCount > 0) meshes.push({ object, transform });
    for (const component of object.components) {
      const fault = follow(component, transform, [...path, p.key]);
      if (fault !== undefined) return fault;
    }
    return undefined;
  };
  for (const item of items) {
    const fault = follow(item, identity, []);
    if (fault !== undefined) return fault;
  }
  return { meshes, supports };
}

/** The placed meshes as one row of triangles; every mesh is a body of its own. A mirrored mesh is turned, so that it still faces outwards. */
export const placedTriangles = (meshes: readonly PlacedMesh[]): TriangleSource => ({
  expected: meshes.reduce((sum, mesh) => sum + mesh.object.triangleCount, 0),
  open: () => openPlaced(meshes),
});

function openPlaced(meshes: readonly PlacedMesh[]): TriangleReader {
  let mesh = 0;
  let next = 0;
  let body = 0;
  const read = (chunk: Float64Array): number => {
    const current = meshes[mesh];
    if (current === undefined) return 0;
    const { object, transform: m } = current;
    const mirrored = determinant(m) < 0;
    const count = Math.min(chunkTriangles, object.triangleCount - next);
    for (let t = 0, to = 0; t < count; t++)
      for (let corner = 0; corner < 3; corner++) {
        const turned = mirrored ? 2 - corner : corner;
        const from = 3 * object.triangles[3 * (next + t) + turned]!;
        const x = object.vertices[from]!;
        const y = object.vertices[from + 1]!;
        const z = object.vertices[from + 2]!;
        for (let k = 0; k < 3; k++) chunk[to++] = m[k]! * x + m[3 + k]! * y + m[6 + k]! * z + m[9 + k]!;
      }
    body = mesh;
    next += count;
    if (next === object.triangleCount) {
      mesh++;
      next = 0;
    }
    return count;
  };
  return { read, body: () => body };
}
