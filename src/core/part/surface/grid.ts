import type { Point } from "./winding.js";

/** Boxes of triangles that reach into a region: six numbers each, low x y z and high x y z. */
export interface Boxes {
  /** Offsets of the triangles, nine numbers each. */
  readonly at: Int32Array;
  readonly bounds: Float64Array;
}

/** The boxes of the triangles that reach into a region. */
export function boxesWithin(triangles: Float64Array, low: Point, high: Point): Boxes {
  const found: number[] = [];
  const bounds: number[] = [];
  const box = new Float64Array(6);
  for (let i = 0; i < triangles.length; i += 9) {
    let inside = true;
    for (let k = 0; k < 3; k++) {
      const [a, b, c] = [triangles[i + k]!, triangles[i + 3 + k]!, triangles[i + 6 + k]!];
      box[k] = Math.min(a, b, c);
      box[3 + k] = Math.max(a, b, c);
      inside &&= box[3 + k]! >= low[k]! && box[k]! <= high[k]!;
    }
    if (!inside) continue;
    found.push(i);
    bounds.push(...box);
  }
  return { at: Int32Array.from(found), bounds: Float64Array.from(bounds) };
}

/** A region cut into n by n by n cells, with the boxes that reach into each. */
export interface Grid {
  readonly n: number;
  /** Cells that a box covers: first and last along x, y and z. */
  readonly span: (bounds: Float64Array, box: number, into: Int32Array) => void;
  /** The boxes of cell c are in `boxes` from starts[c] to starts[c + 1]. */
  readonly starts: Int32Array;
  readonly boxes: Int32Array;
}

const finest = 96;

/** Sorts boxes into a grid, coarser if large boxes would be in too many cells. */
export function gridOf(boxes: Boxes, low: Point, high: Point): Grid {
  const count = boxes.at.length;
  const span = new Int32Array(6);
  for (let n = Math.min(finest, Math.max(1, Math.round(Math.sqrt(count) / 2))); ; n = Math.max(1, n >> 1)) {
    const scale = low.map((x, k) => n / Math.max(high[k]! - x, Number.MIN_VALUE));
    const cell = (value: number, k: number): number =>
      Math.max(0, Math.min(n - 1, Math.floor((value - low[k]!) * scale[k]!)));
    const spanOf = (bounds: Float64Array, box: number, into: Int32Array): void => {
      for (let k = 0; k < 3; k++) {
        into[k] = cell(bounds[6 * box + k]!, k);
        into[3 + k] = cell(bounds[6 * box + 3 + k]!, k);
      }
    };
    const starts = new Int32Array(n ** 3 + 1);
    let entries = 0;
    const visit = (use: (c: number, box: number) => void): void => {
      for (let box = 0; box < count; box++) {
        spanOf(boxes.bounds, box, span);
        for (let x = span[0]!; x <= span[3]!; x++)
          for (let y = span[1]!; y <= span[4]!; y++)
            for (let z = span[2]!; z <= span[5]!; z++) use((x * n + y) * n + z, box);
      }
    };
    for (let box = 0; box < count; box++) {
      spanOf(boxes.bounds, box, span);
      entries += (span[3]! - span[0]! + 1) * (span[4]! - span[1]! + 1) * (span[5]! - span[2]! + 1);
    }
    if (n > 1 && entries > 16 * count + 10_000) continue;
    visit((c) => starts[c + 1]!++);
    for (let c = 0; c < n ** 3; c++) starts[c + 1]! += starts[c]!;
    const next = starts.slice();
    const sorted = new Int32Array(entries);
    visit((c, box) => {
      sorted[next[c]!++] = box;
    });
    return { n, span: spanOf, starts, boxes: sorted };
  }
}
