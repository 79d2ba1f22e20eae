import type { Fault } from "../../fault.js";
import { addTriangles, noSums, type SurfaceSums } from "../sums.js";
import { eachChunk, type TriangleSource } from "../triangles.js";

/** Triangles in groups: the group of each, in the order of the file, and how many groups there are. */
export interface Groups {
  readonly groupOf: Int32Array;
  readonly groups: number;
}

/** Area, signed volume and box of every group of triangles of a file, by reading it once more. */
export function sumsOfGroups(source: TriangleSource, { groupOf, groups }: Groups): SurfaceSums[] | Fault {
  const sums = Array.from({ length: groups }, noSums);
  let read = 0;
  const fault = eachChunk(source, (chunk, count) => {
    // Neighbours mostly belong to one group: add them in runs.
    for (let from = 0, to = 1; from < count; from = to, to++) {
      while (to < count && groupOf[read + to] === groupOf[read + from]) to++;
      addTriangles(sums[groupOf[read + from]!]!, chunk.subarray(9 * from), to - from);
    }
    read += count;
  });
  return fault ?? sums;
}

/** Triangles sorted by group: those of group g from starts[g] to starts[g + 1], nine numbers each. */
export interface SortedTriangles {
  readonly triangles: Float64Array;
  readonly starts: Int32Array;
}

/** The triangles of the wanted groups, by reading the file once more; a group that is not wanted gets none. */
export function sortedByGroup(
  source: TriangleSource,
  { groupOf, groups }: Groups,
  isWanted: (group: number) => boolean,
): SortedTriangles | Fault {
  const starts = new Int32Array(groups + 1);
  for (const group of groupOf) if (isWanted(group)) starts[group + 1]!++;
  for (let group = 0; group < groups; group++) starts[group + 1]! += starts[group]!;
  const next = starts.slice();
  const triangles = new Float64Array(9 * starts[groups]!);
  let read = 0;
  const fault = eachChunk(source, (chunk, count) => {
    for (let t = 0; t < count; t++) {
      const group = groupOf[read++]!;
      if (isWanted(group)) triangles.set(chunk.subarray(9 * t, 9 * t + 9), 9 * next[group]!++);
    }
  });
  return fault ?? { triangles, starts };
}
