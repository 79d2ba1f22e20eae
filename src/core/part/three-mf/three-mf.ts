import { done, error, failed, type Outcome, warning } from "../../fault.js";
import type { TriangleSource } from "../triangles.js";
import type { MeshUnit } from "../units.js";
import { type Model, readModel } from "./package-model.js";
import { modelPart, partAt } from "./package-start.js";
import { placeAll, placedTriangles } from "./placed.js";
import { mostUnpackedBytes } from "./unpack.js";
import { zipDirectory } from "./zip.js";

/** The triangles of a 3MF file as its build places them, and the unit they are in. */
export interface ThreeMf {
  readonly triangles: TriangleSource;
  readonly unit: MeshUnit;
}

/**
 * Reads a 3MF package: core specification, and objects in other model parts (production extension). Materials
 * are passed over; any other required extension is refused. Support structures are left out, with a warning.
 */
export async function readThreeMf(
  bytes: Uint8Array,
  mostBytes = mostUnpackedBytes,
): Promise<Outcome<ThreeMf>> {
  const entries = zipDirectory(bytes);
  if (!(entries instanceof Map))
    return failed(entries as Exclude<typeof entries, ReadonlyMap<string, unknown>>);
  const start = await modelPart(entries);
  if ("code" in start) return failed(start);
  const root = await readModel(start);
  if ("code" in root) return failed(root);

  const waiting: Model[] = [root];
  const read = new Set([start.name.toLowerCase()]);
  const objects = new Map(root.objects);
  let unpacked = start.size;
  for (let model = waiting.pop(); model !== undefined; model = waiting.pop())
    for (const [path, where] of model.parts) {
      const part = partAt(entries, path, where);
      if ("code" in part) return failed(part);
      if (read.has(part.name.toLowerCase())) continue;
      read.add(part.name.toLowerCase());
      unpacked += part.size;
      if (unpacked > mostBytes)
        return failed(error("mesh-too-large", [], `${where}: the parts unpack to over ${mostBytes} bytes`));
      const more = await readModel(part);
      if ("code" in more) return failed(more);
      if (more.unit !== root.unit)
        return failed(error("mesh-unit", [], `${part.name}: its unit differs from that of ${start.name}`));
      for (const [key, object] of more.objects) objects.set(key, object);
      waiting.push(more);
    }

  const placed = placeAll(objects, root.items);
  if ("code" in placed) return failed(placed);
  const left = placed.supports;
  return done(
    { triangles: placedTriangles(placed.meshes), unit: root.unit },
    left === 0 ? [] : [warning("mesh-support", [], `${left} support structures in the file are left out`)],
  );
}
