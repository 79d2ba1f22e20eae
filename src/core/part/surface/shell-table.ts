import type { Fault } from "../../fault.js";
import { addTriangles, noSums, type SurfaceSums } from "../sums.js";
import { chunkTriangles, eachChunk, type TriangleSource } from "../triangles.js";
import type { Topology } from "./topology.js";

/** Area, signed volume and box of every shell of a file, by reading it once more. */
export function shellSums(source: TriangleSource, topology: Topology): SurfaceSums[] | Fault {
  const sums = Array.from({ length: topology.shells }, noSums);
  const shells = new Int32Array(chunkTriangles);
  const fault = eachChunk(source, (chunk, count, body) => {
    topology.shellsOf(chunk, count, body, shells);
    // Neighbours mostly belong to one shell: add them in runs.
    for (let from = 0, to = 1; from < count; from = to, to++) {
      while (to < count && shells[to] === shells[from]) to++;
      addTriangles(sums[shells[from]!]!, chunk.subarray(9 * from), to - from);
    }
  });
  return fault ?? sums;
}

/** The triangles of the wanted shells, nine numbers each; a shell that is not wanted gets none. */
export function shellTriangles(
  source: TriangleSource,
  topology: Topology,
  sums: readonly SurfaceSums[],
  wanted: ReadonlySet<number>,
): Float64Array[] | Fault {
  const kept = sums.map((shell, n) => new Float64Array(wanted.has(n) ? 9 * shell.triangles : 0));
  const ends = new Uint32Array(sums.length);
  const shells = new Int32Array(chunkTriangles);
  const fault = eachChunk(source, (chunk, count, body) => {
    topology.shellsOf(chunk, count, body, shells);
    for (let t = 0; t < count; t++) {
      const shell = shells[t]!;
      if (!wanted.has(shell)) continue;
      kept[shell]!.set(chunk.subarray(9 * t, 9 * t + 9), ends[shell]);
      ends[shell]! += 9;
    }
  });
  return fault ?? kept;
}
