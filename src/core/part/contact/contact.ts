import type { Fault } from "../../fault.js";
import { addTriangles, noSums } from "../sums.js";
import { type Grid, gridOf } from "../surface/grid.js";
import { type Groups, type SortedTriangles, sortedByGroup, sumsOfGroups } from "../surface/groups.js";
import { nearPairs, overlapBounds, type Pair } from "../surface/overlap.js";
import type { Topology } from "../surface/topology.js";
import type { TriangleSource } from "../triangles.js";
import { coplanarOverlap } from "./coplanar-overlap.js";
import { piecesOf } from "./pieces.js";

/** Area of the faces that lie exactly on others, both counted [square of the file's unit]. */
export interface Contact {
  /** On faces that face the same way: bodies that are there twice. */
  readonly doubledArea: number;
  /** On faces that face them: between bodies that touch. */
  readonly sharedArea: number;
  /** Whether there was too much to compare. */
  readonly undecided: boolean;
}

/** Less contact than this share of the area changes no figure that one would notice, and is not said. */
export const noticedShare = 1e-3;

const none: Contact = { doubledArea: 0, sharedArea: 0, undecided: false };

/** With more pieces than this, all are compared, whether their boxes touch or not. */
const mostBoxes = 2000;

const mostComparisons = 100_000_000;

/**
 * Finds faces of a closed surface that lie on each other within a tolerance [unit of the file]. Only pieces of the
 * surface that hang together across edges are compared with each other: a file that is one piece costs little. Of
 * shells that are known to overlap, faces in one plane that face the same way are part of the overlap, and left out.
 */
export function contactOf(
  source: TriangleSource,
  { corners, cornerCount, shells }: Topology,
  tolerance: number,
  overlapping: readonly Pair[],
): Contact | Fault {
  if (corners.length / 3 > overlapBounds.triangles) return { ...none, undecided: true };
  const pieces = piecesOf(corners, cornerCount);
  if (pieces.groups < 2) return none;
  const near = nearPieces(source, pieces, tolerance);
  if (typeof near !== "function") return near;
  const sorted = sortedByGroup(source, pieces, near);
  if ("code" in sorted) return sorted;
  const shellOf = new Int32Array(pieces.groups);
  pieces.groupOf.forEach((piece, t) => {
    shellOf[piece] = shells.groupOf[t]!;
  });
  const pairOf = (a: number, b: number): number => Math.min(a, b) * shells.groups + Math.max(a, b);
  const known = new Set(overlapping.map(([a, b]) => pairOf(a, b)));
  const overlap = (one: number, other: number): boolean => known.has(pairOf(shellOf[one]!, shellOf[other]!));
  return contactOfGroups(sorted, tolerance, overlap);
}

/** Whether a piece may touch others. */
function nearPieces(
  source: TriangleSource,
  pieces: Groups,
  tolerance: number,
): ((piece: number) => boolean) | Fault {
  if (pieces.groups > mostBoxes) return () => true;
  const sums = sumsOfGroups(source, pieces);
  if (!Array.isArray(sums)) return sums;
  const pairs = nearPairs(sums, { margin: tolerance });
  const near = pairs && new Set(pairs.flat());
  return (piece) => near?.has(piece) ?? true;
}

/** Finds faces of groups of triangles that lie on faces of other groups within a tolerance. */
export function contactOfGroups(
  { triangles, starts }: SortedTriangles,
  tolerance: number,
  overlap: (group: number, other: number) => boolean = () => false,
): Contact {
  const count = triangles.length / 9;
  const piece = new Int32Array(count);
  for (let n = 0; n + 1 < starts.length; n++) piece.fill(n, starts[n], starts[n + 1]);
  const { grid, bounds } = gridOfTriangles(triangles, tolerance);
  const doubled = new Float64Array(count);
  const shared = new Float64Array(count);
  const compare = (i: number, j: number): void => {
    const area = coplanarOverlap(triangles, 9 * i, 9 * j, tolerance);
    if (area > 0 && overlap(piece[i]!, piece[j]!)) return;
    const into = area > 0 ? doubled : shared;
    into[i]! += Math.abs(area);
    into[j]! += Math.abs(area);
  };
  if (!eachMeeting(grid, bounds, piece, compare)) return { ...none, undecided: true };
  // Of three faces on one another each meets two, and is there once.
  const total = (areas: Float64Array): number =>
    areas.reduce((sum, area, t) => sum + (area > 0 ? Math.min(area, areaOf(triangles, 9 * t)) : 0), 0);
  return { doubledArea: total(doubled), sharedArea: total(shared), undecided: false };
}

const areaOf = (triangles: Float64Array, i: number): number => {
  const sums = noSums();
  addTriangles(sums, triangles.subarray(i, i + 9), 1);
  return sums.area;
};

/** A grid of the triangles' boxes, each widened by a margin. */
function gridOfTriangles(triangles: Float64Array, margin: number) {
  const count = triangles.length / 9;
  const at = Int32Array.from({ length: count }, (_, t) => 9 * t);
  const bounds = new Float64Array(6 * count);
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let t = 0; t < count; t++)
    for (let k = 0; k < 3; k++) {
      const [a, b, c] = [triangles[9 * t + k]!, triangles[9 * t + 3 + k]!, triangles[9 * t + 6 + k]!];
      bounds[6 * t + k] = Math.min(a, b, c) - margin;
      bounds[6 * t + 3 + k] = Math.max(a, b, c) + margin;
      low[k] = Math.min(low[k]!, bounds[6 * t + k]!);
      high[k] = Math.max(high[k]!, bounds[6 * t + 3 + k]!);
    }
  return { grid: gridOf({ at, bounds }, low, high), bounds };
}

/**
 * Hands over every two triangles of different pieces whose boxes meet, once; says false where that takes too many
 * comparisons.
 */
function eachMeeting(
  { n, span, starts, boxes }: Grid,
  bounds: Float64Array,
  piece: Int32Array,
  use: (i: number, j: number) => void,
): boolean {
  const [cellsOfI, cellsOfJ] = [new Int32Array(6), new Int32Array(6)];
  const meet = (i: number, j: number): boolean => {
    for (let k = 0; k < 3; k++)
      if (bounds[6 * i + 3 + k]! < bounds[6 * j + k]! || bounds[6 * j + 3 + k]! < bounds[6 * i + k]!)
        return false;
    return true;
  };
  // Two boxes may meet in several cells, and are looked at in the first of them.
  const firstCell = (i: number, j: number): number => {
    span(bounds, i, cellsOfI);
    span(bounds, j, cellsOfJ);
    const first = (k: number): number => Math.max(cellsOfI[k]!, cellsOfJ[k]!);
    return (first(0) * n + first(1)) * n + first(2);
  };
  let comparisons = 0;
  for (let cell = 0; cell < n ** 3; cell++) {
    const [from, to] = [starts[cell]!, starts[cell + 1]!];
    let alone = true;
    for (let entry = from + 1; entry < to && alone; entry++)
      alone = piece[boxes[entry]!] === piece[boxes[from]!];
    if (alone) continue;
    comparisons += ((to - from) * (to - from - 1)) / 2;
    if (comparisons > mostComparisons) return false;
    for (let a = from; a < to; a++)
      for (let b = a + 1; b < to; b++) {
        const [i, j] = [boxes[a]!, boxes[b]!];
        if (piece[i] !== piece[j] && meet(i, j) && firstCell(i, j) === cell) use(i, j);
      }
  }
  return true;
}
