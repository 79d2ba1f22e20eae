import { error, failed, type Outcome } from "../../core/fault.js";
import { measureMesh } from "../../core/part/measure.js";
import type { MeshMeasure } from "../../core/part/mesh-measure.js";
import type { MeshUnit } from "../../core/part/units.js";
import { because } from "../source/include.js";

/** Largest model file to read [bytes]: some ten million triangles. */
export const largestModel = 512 * 1024 * 1024;

/** Bytes of a file, of which `largestModel` + 1 are enough; rejects or throws if it cannot read the file. */
export type ReadBytes = (name: string) => Uint8Array | Promise<Uint8Array>;

/** Measures a model file; the unit applies to an STL. */
export type ReadModel = (file: string, unit?: MeshUnit) => Promise<Outcome<MeshMeasure>>;

async function measured(
  file: string,
  unit: MeshUnit | undefined,
  readBytes: ReadBytes,
): Promise<Outcome<MeshMeasure>> {
  let bytes: Uint8Array;
  try {
    bytes = await readBytes(file);
  } catch (cause) {
    return failed(error("mesh", [], because(cause), "the name is relative to the batch file that holds it"));
  }
  if (bytes.length > largestModel)
    return failed(error("mesh-too-large", [], "it is larger than 512 MiB", "export it with fewer triangles"));
  return measureMesh(bytes, unit === undefined ? {} : { unit });
}

/** Measures model files. */
export const modelReader =
  (readBytes: ReadBytes): ReadModel =>
  (file, unit) =>
    measured(file, unit, readBytes);
