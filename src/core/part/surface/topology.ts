import type { Fault } from "../../fault.js";
import { chunkTriangles, eachChunk, type TriangleSource } from "../triangles.js";
import { type EdgesLeft, edgesLeft, noEdges, takeEdge } from "./edges.js";
import { enterCorners, join, newForest, numberTrees } from "./shells.js";
import { enterBody, newWelder, type Welder, weldExactly } from "./weld.js";
import { weldNear } from "./weld-near.js";

/** How the triangles of a file hang together. */
export interface Topology {
  readonly left: EdgesLeft;
  /** x y z of a corner at some open edge, or nothing if the surface is closed. */
  readonly openAt: readonly [x: number, y: number, z: number] | undefined;
  /** Groups of triangles that share corners. */
  readonly shells: number;
  /** Writes the shell of every triangle of a chunk, for a second reading of the same file. */
  readonly shellsOf: (chunk: Float64Array, count: number, body: number, shells: Int32Array) => void;
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
  const add = (chunk: Float64Array, count: number, body: number): void => {
    const ids = number(chunk, count, body);
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
      shells: trees,
      shellsOf: (chunk, count, body, shells) => {
        const ids = number(chunk, count, body);
        for (let t = 0; t < count; t++) shells[t] = treeOf[ids[3 * t]!]!;
      },
    };
  };
  return { add, end };
}

/** Reads a file once more and collects its topology with corners within a tolerance [unit of the file] taken as one. */
export function topologyWithin(source: TriangleSource, tolerance: number): Topology | Fault {
  const collector = topologyCollector(source.expected, tolerance);
  return eachChunk(source, collector.add) ?? collector.end();
}
