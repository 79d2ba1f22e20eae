import { findRoot } from "../../maths/root.js";

/**
 * How many times weaker the last of n rinses is than the liquor, where fresh water flows through them against the work:
 * 1 + R + ... + Rⁿ = (R^(n+1) - 1)/(R - 1), R = W/D.
 *
 * W water and D drag-out in one unit, per load or per hour; running steadily. For reference: its inverse is the share of
 * loose dye that is left, to set beside that of still rinses.
 * @source counterflowNote
 * @example
 * counterFlowRatio(10, 2) // => 111
 * counterFlowRatio(1, 3) // => 4
 */
export function counterFlowRatio(waterPerDragOut: number, rinses: number): number {
  let ratio = 1;
  for (let n = 0; n < rinses; n++) ratio = 1 + waterPerDragOut * ratio;
  return ratio;
}

/**
 * Water [unit of the drag-out] that makes the last of n rinses in counter-flow so many times weaker than the liquor:
 * `counterFlowRatio` solved for W. Undefined for ratios under 1 and without rinses.
 *
 * The trade's D (ratio^(1/n) + 1/n) is 1 to 5 % more.
 * @source counterflowNote
 * @example
 * counterFlowWater(2500, { dragOut: 0.2, rinses: 2 }) // => 9.8985
 */
export function counterFlowWater(
  ratio: number,
  { dragOut, rinses }: { readonly dragOut: number; readonly rinses: number },
): number | undefined {
  const excess = (waterPerDragOut: number): number => counterFlowRatio(waterPerDragOut, rinses) - ratio;
  const waterPerDragOut = findRoot(excess, { low: 0, high: ratio });
  return waterPerDragOut === undefined ? undefined : dragOut * waterPerDragOut;
}
