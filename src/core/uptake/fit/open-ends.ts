import { error, type Fault } from "../../fault.js";
import type { UptakePoint } from "./fit-law.js";

/**
 * What the laws become where the points leave their rate open: uptake in step with time, or the same at all
 * times. Each is fitted by its one constant; the fault is what to say where that does as well as a law.
 * @example
 * openEnds([1, 2, 3].map((seconds) => ({ seconds, uptake: 2 * seconds }))).map((end) => end.residualSum) // => [0, 8]
 */
export function openEnds(
  points: readonly UptakePoint[],
): { readonly residualSum: number; readonly fault: Fault }[] {
  const sumLeft = (shape: (seconds: number) => number): number => {
    const [product, square] = points.reduce(
      ([p, q], { seconds, uptake }) => [p + uptake * shape(seconds), q + shape(seconds) ** 2],
      [0, 0],
    );
    return points.reduce((sum, p) => sum + (p.uptake - (product / square) * shape(p.seconds)) ** 2, 0);
  };
  return [
    {
      residualSum: sumLeft((seconds) => seconds),
      fault: error(
        "fit-no-plateau",
        [],
        "uptake has not begun to level off at the longest time: plateau and rate cannot be told apart",
        "add longer times, three to five times the longest",
      ),
    },
    {
      residualSum: sumLeft((seconds) => (seconds > 0 ? 1 : 0)),
      fault: error(
        "fit-no-rise",
        [],
        "uptake is already level at the shortest time: the rate cannot be told",
        "add shorter times",
      ),
    },
  ];
}
