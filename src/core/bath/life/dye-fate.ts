import type { DrainSaving, Range } from "../rinse/longer-drain.js";

/** Where the dye of a bath went, as shares of all that was put in. */
export interface DyeFate {
  readonly onPartsShare: number;
  readonly rinsedShare: number;
  readonly leftShare: number;
}

/**
 * Shares of the dye on the parts, rinsed away, and left in the bath. All 0 where there was no dye.
 * @example
 * dyeFate({ takenUp: 120, draggedOut: 60, left: 420 }) // => { onPartsShare: 0.2, rinsedShare: 0.1, leftShare: 0.7 }
 */
export function dyeFate(dye: {
  readonly takenUp: number;
  readonly draggedOut: number;
  readonly left: number;
}): DyeFate {
  const total = dye.takenUp + dye.draggedOut + dye.left;
  const share = (amount: number): number => (total > 0 ? amount / total : 0);
  return { onPartsShare: share(dye.takenUp), rinsedShare: share(dye.draggedOut), leftShare: share(dye.left) };
}

/**
 * Dye that a longer drain would have kept out of the rinse [mL or g], at the strengths the bath had, and the time
 * that it would have taken [min].
 * @example
 * drainSaves({ draggedOut: 60, loads: 30 }, { law: "film drains with 1/√t, to 40 s", share: { low: 0.05, high: 0.3 }, dragOutMlPerDm2: { low: 0.56, high: 0.76 }, extraSeconds: 10 }) // => { dye: { low: 3, high: 18 }, minutes: 5 }
 */
export const drainSaves = (
  worked: { readonly draggedOut: number; readonly loads: number },
  saving: DrainSaving,
): { readonly dye: Range; readonly minutes: number } => ({
  dye: { low: worked.draggedOut * saving.share.low, high: worked.draggedOut * saving.share.high },
  minutes: (worked.loads * saving.extraSeconds) / 60,
});
