import { error, type Fault } from "../../fault.js";
import { chunkTriangles, type TriangleReader, type TriangleSource } from "../triangles.js";

const headerBytes = 84;
const triangleBytes = 50;

/** Triangles that the header of a binary STL announces (bytes 80 to 83, little-endian). */
export const announcedTriangles = (bytes: Uint8Array): number =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(80, true);

/** Length in bytes of a binary STL with so many triangles. */
export const binaryLength = (triangles: number): number => headerBytes + triangleBytes * triangles;

/** What is wrong with the length of a binary STL, or nothing. Bytes after the last triangle are left to the caller. */
export function binaryLengthFault(bytes: Uint8Array): Fault | undefined {
  if (bytes.length < headerBytes)
    return error(
      "mesh-truncated",
      [],
      `byte ${bytes.length}: the file ends inside the ${headerBytes}-byte header of a binary STL`,
      "export the model again",
    );
  const announced = announcedTriangles(bytes);
  if (binaryLength(announced) <= bytes.length) return undefined;
  const whole = Math.floor((bytes.length - headerBytes) / triangleBytes);
  return error(
    "mesh-truncated",
    [],
    `byte 80: the header announces ${announced} triangles, which takes ${binaryLength(announced)} bytes; the file ends at byte ${bytes.length}, after ${whole} whole triangles`,
    "export or copy the model again",
  );
}

/** The first number of a triangle that is not finite, as a fault. */
function notFinite(view: DataView, triangle: number): Fault {
  for (let i = 0; i < 9; i++) {
    const byte = headerBytes + triangleBytes * triangle + 12 + 4 * i;
    const value = view.getFloat32(byte, true);
    if (!Number.isFinite(value))
      return error(
        "mesh-not-finite",
        [],
        `byte ${byte}: ${"xyz"[i % 3]} of corner ${Math.floor(i / 3) + 1} of triangle ${triangle + 1} is ${value}, not a number`,
        "repair or export the model again",
      );
  }
  throw new Error(`triangle ${triangle} is finite`);
}

/** A binary STL whose length was checked. The normals it stores are not read: the order of the corners says the same. */
export const binaryTriangles = (bytes: Uint8Array): TriangleSource => ({
  expected: announcedTriangles(bytes),
  open: () => openBinary(bytes),
});

function openBinary(bytes: Uint8Array): TriangleReader {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const triangles = announcedTriangles(bytes);
  let next = 0;
  const read = (chunk: Float64Array): number | Fault => {
    const first = next;
    const count = Math.min(chunkTriangles, triangles - first);
    for (let t = 0, to = 0; t < count; t++) {
      const at = headerBytes + triangleBytes * (first + t) + 12;
      let sum = 0;
      for (let i = 0; i < 9; i++) {
        const value = view.getFloat32(at + 4 * i, true);
        chunk[to++] = value;
        sum += value;
      }
      // Nine float32 cannot overflow a float64, so only infinities and NaN fail here.
      if (sum - sum !== 0) return notFinite(view, first + t);
    }
    next = first + count;
    return count;
  };
  return { read, body: () => 0 };
}
