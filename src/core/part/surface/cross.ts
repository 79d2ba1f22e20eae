import { boxesWithin, gridOf } from "./grid.js";
import { pierces } from "./pierce.js";
import type { Point } from "./winding.js";

/** The triangles moved by a shift. */
export const shifted = (triangles: Float64Array, shift: Point): Float64Array =>
  triangles.map((value, i) => value + shift[i % 3]!);

/** Whether two boxes of six numbers have no point in common. */
function apart(a: Float64Array, i: number, b: Float64Array, j: number): boolean {
  for (let k = 0; k < 3; k++)
    if (a[6 * i + 3 + k]! < b[6 * j + k]! || b[6 * j + 3 + k]! < a[6 * i + k]!) return true;
  return false;
}

/**
 * Whether two surfaces cross inside a region: an edge of either goes through a triangle of the other one. Undefined
 * if that would take more than so many comparisons. Surfaces that only touch need not cross.
 */
export function surfacesCross(
  a: Float64Array,
  b: Float64Array,
  low: Point,
  high: Point,
  mostComparisons: number,
): boolean | undefined {
  const ofA = boxesWithin(a, low, high);
  const ofB = boxesWithin(b, low, high);
  const { n, span, starts, boxes } = gridOf(ofB, low, high);
  const cells = new Int32Array(6);
  let comparisons = 0;
  for (let i = 0; i < ofA.at.length; i++) {
    span(ofA.bounds, i, cells);
    for (let x = cells[0]!; x <= cells[3]!; x++)
      for (let y = cells[1]!; y <= cells[4]!; y++)
        for (let z = cells[2]!; z <= cells[5]!; z++) {
          const cell = (x * n + y) * n + z;
          const end = starts[cell + 1]!;
          comparisons += 1 + end - starts[cell]!;
          if (comparisons > mostComparisons) return undefined;
          for (let entry = starts[cell]!; entry < end; entry++) {
            const j = boxes[entry]!;
            if (apart(ofA.bounds, i, ofB.bounds, j)) continue;
            if (pierces(a, ofA.at[i]!, b, ofB.at[j]!) || pierces(b, ofB.at[j]!, a, ofA.at[i]!)) return true;
          }
        }
  }
  return false;
}
