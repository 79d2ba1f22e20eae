/** Amounts over finished loads. Dye is mL of concentrate or g of powder, water is measured cold. */
export interface LifeTotals {
  readonly loads: number;
  readonly parts: number;
  readonly areaDm2: number;
  readonly takenUp: number;
  readonly draggedOut: number;
  readonly added: number;
  /** Of a mix each dye. */
  readonly addedEach?: readonly number[];
  readonly waterMl: number;
  readonly dipSeconds: number;
  /** Waited beside the bath, the first ten minutes of each wait. */
  readonly waitSeconds: number;
  /** Changing rinse water and topping up, as far as their times are known. */
  readonly tendingSeconds: number;
}

/**
 * Totals with those of another stretch added a number of times; -1 takes them off.
 * @example
 * addedTotals({ loads: 3, parts: 30, areaDm2: 6, takenUp: 1, draggedOut: 2, added: 0, waterMl: 5, dipSeconds: 90, waitSeconds: 0, tendingSeconds: 0 }, { loads: 2, parts: 20, areaDm2: 4, takenUp: 1, draggedOut: 1, added: 0, waterMl: 0, dipSeconds: 60, waitSeconds: 0, tendingSeconds: 0 }, 10).loads // => 23
 */
export const addedTotals = (totals: LifeTotals, other: LifeTotals, times: number): LifeTotals => ({
  loads: totals.loads + times * other.loads,
  parts: totals.parts + times * other.parts,
  areaDm2: totals.areaDm2 + times * other.areaDm2,
  takenUp: totals.takenUp + times * other.takenUp,
  draggedOut: totals.draggedOut + times * other.draggedOut,
  added: totals.added + times * other.added,
  ...(totals.addedEach && {
    addedEach: totals.addedEach.map((added, i) => added + times * other.addedEach![i]!),
  }),
  waterMl: totals.waterMl + times * other.waterMl,
  dipSeconds: totals.dipSeconds + times * other.dipSeconds,
  waitSeconds: totals.waitSeconds + times * other.waitSeconds,
  tendingSeconds: totals.tendingSeconds + times * other.tendingSeconds,
});

/** Totals before the first load. */
export const noTotals: LifeTotals = {
  loads: 0,
  parts: 0,
  areaDm2: 0,
  takenUp: 0,
  draggedOut: 0,
  added: 0,
  waterMl: 0,
  dipSeconds: 0,
  waitSeconds: 0,
  tendingSeconds: 0,
};
