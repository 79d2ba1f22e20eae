import type { SurfaceSums } from "../sums.js";
import { shifted, surfacesCross } from "./cross.js";
import { type Point, windingNumber } from "./winding.js";

/** Two shells, by number. */
export type Pair = readonly [a: number, b: number];

/** Bounds of the work spent on shells that may overlap. */
export const overlapBounds = { pairs: 5000, triangles: 4_000_000, comparisons: 20_000_000 };

/**
 * Pairs of shells whose boxes overlap, or are nearer than a margin above 0, in order; undefined if there are more
 * than the bound.
 */
export function nearPairs(
  shells: readonly SurfaceSums[],
  { margin = 0, most = overlapBounds.pairs }: { readonly margin?: number; readonly most?: number } = {},
): Pair[] | undefined {
  const order = shells.map((_, n) => n).sort((a, b) => shells[a]!.low[0] - shells[b]!.low[0]);
  const pairs: Pair[] = [];
  let looked = 0;
  for (let i = 0; i < order.length; i++) {
    const a = order[i]!;
    for (let j = i + 1; j < order.length; j++) {
      const b = order[j]!;
      if (shells[b]!.low[0] >= shells[a]!.high[0] + margin) break;
      if (++looked > 1000 * most) return undefined;
      const apart = [1, 2].some(
        (k) =>
          shells[b]!.low[k]! >= shells[a]!.high[k]! + margin ||
          shells[a]!.low[k]! >= shells[b]!.high[k]! + margin,
      );
      if (!apart && pairs.push(a < b ? [a, b] : [b, a]) > most) return undefined;
    }
  }
  return pairs.sort((p, q) => p[0] - q[0] || p[1] - q[1]);
}

/** How two shells lie to each other. */
export type Relation = "apart" | "crossing" | "a-in-b" | "b-in-a" | "undecided";

// Off every likely axis and diagonal.
const direction: Point = [0.5642, 0.7431, 0.3593];

/**
 * Relation of two closed shells whose boxes overlap. Faces that lie in one plane decide nothing, so one shell
 * is shifted by a millionth of the common size, there and back: only what holds both times counts. Shells that
 * merely touch come out apart.
 */
export function relation(
  a: Float64Array,
  b: Float64Array,
  boxA: SurfaceSums,
  boxB: SurfaceSums,
  mostComparisons = overlapBounds.comparisons,
): Relation {
  const size = Math.max(
    ...boxA.high.map((x, k) => Math.max(x, boxB.high[k]!) - Math.min(boxA.low[k]!, boxB.low[k]!)),
  );
  const step = 1e-6 * size;
  const low = boxA.low.map((x, k) => Math.max(x, boxB.low[k]!) - step) as [number, number, number];
  const high = boxA.high.map((x, k) => Math.min(x, boxB.high[k]!) + step) as [number, number, number];
  const [there, back] = [step, -step].map((length): Relation => {
    const moved = shifted(b, direction.map((d) => d * length) as [number, number, number]);
    const crossing = surfacesCross(a, moved, low, high, mostComparisons);
    if (crossing === undefined) return "undecided";
    if (crossing) return "crossing";
    if (Math.abs(windingNumber(moved, [a[0]!, a[1]!, a[2]!])) > 0.5) return "a-in-b";
    if (Math.abs(windingNumber(a, [moved[0]!, moved[1]!, moved[2]!])) > 0.5) return "b-in-a";
    return "apart";
  });
  if (there === "apart" || back === "apart") return "apart";
  if (there === "undecided" || back === "undecided") return "undecided";
  return there === back ? there! : "crossing";
}
