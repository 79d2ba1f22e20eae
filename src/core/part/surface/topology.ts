import type { Fault } from "../../fault.js";
import { chunkTriangles, eachChunk, type TriangleSource } from "../triangles.js";
import { type EdgesLeft, edgesLeft, noEdges, takeEdge } from "./edges.js";
import { enterCorners, join, newForest, numberTrees } from "./forest.js";
import type { Groups } from "./groups.js";
import { enterBody, newWelder, type Welder, weldExactly } from "./weld.js";
import { weldNear } from "./weld-near.js";

/** How the triangles of a file hang together. */
export interface Topology {
  readonly left: EdgesLeft;
  /** x y z of a corner at some open edge, or nothing if the surface is closed. */
  readonly openAt: readonly [x: number, y: number, z: number] | undefined;
  /** Triangles that share corners. */
  readonly shells: Groups;
  /** The corners of every triangle by number, three a triangle, and how many corners there are. */
  readonly corners: Int32Array;
  readonly cornerCount: number;
}

/** Numbers the corners of chunks: equal coordinates, or within a tolerance above 0 [unit of the file]. */
function corners(welder: Welder, tolerance: number) {
  const ids = new Int32Array(3 * chunkTriangles);
  return (chunk: Float64Array, count: number, body: number): Int32Array => {
    enterBody(welder, body);
    if (tolerance > 0) weldNear(welder, tolerance, chunk, 3 * count, ids);
    else weldExactly(welder, chunk, 3 * count, ids);
    return ids;
  };
}

/** Collects the topology of a file chunk by chunk. */
export function topologyCollector(expected: number, tolerance = 0) {
  const welder = newWelder(expected / 2 + 1024);
  const number = corners(welder, tolerance);
  const edges = noEdges();
  const forest = newForest(expected / 2 + 1024);
  let kept = new Int32Array(3 * Math.max(expected, chunkTriangles));
  let length = 0;
  const add = (chunk: Float64Array, count: number, body: number): void => {
    const ids = number(chunk, count, body);
    if (length + 3 * count > kept.length) {
      const more = new Int32Array(2 * kept.length);
      more.set(kept);
      kept = more;
    }
    kept.set(ids.subarray(0, 3 * count), length);
    length += 3 * count;
    enterCorners(forest, welder.count);
    const { parent } = forest;
    for (let i = 0; i < 3 * count; i += 3) {
      const a = ids[i]!;
      const b = ids[i + 1]!;
      const c = ids[i + 2]!;
      takeEdge(edges, a, b);
      takeEdge(edges, b, c);
      takeEdge(edges, c, a);
      join(parent, a, b);
      join(parent, a, c);
    }
  };
  const end = (): Topology => {
    const left = edgesLeft(edges);
    const { treeOf, trees } = numberTrees(forest);
    const place = (corner: number) => welder.places.subarray(3 * corner, 3 * corner + 3);
    const [x, y, z] = left.corner < 0 ? [] : place(left.corner);
    return {
      left,
      openAt: x === undefined || y === undefined || z === undefined ? undefined : [x, y, z],
      shells: {
        groupOf: Int32Array.from({ length: length / 3 }, (_, t) => treeOf[kept[3 * t]!]!),
        groups: trees,
      },
      corners: kept.subarray(0, length),
      cornerCount: welder.count,
    };
  };
  return { add, end };
}

/** Reads a file once more and collects its topology with corners within a tolerance [unit of the file] taken as one. */
export function topologyWithin(source: TriangleSource, tolerance: number): Topology | Fault {
  const collector = topologyCollector(source.expected, tolerance);
  return eachChunk(source, collector.add) ?? collector.end();
}
