import { exactSum } from "../../maths/exact-sum.js";
import type { BathState } from "./bath-state.js";
import type { MixedAim, MixedDip } from "./mixed-dip.js";
import type { WorkedBath } from "./worked-bath.js";

/** Strength of each dye relative to the bath as made up. */
export const strengthEach = ({ volumeL, dyeEach }: BathState, fresh: BathState): readonly number[] =>
  fresh.dyeEach?.map((dye, i) => (volumeL > 0 ? dyeEach![i]! / volumeL / (dye / fresh.volumeL) : 0)) ?? [];

/** Finds a load's dip in a mixed bath and enters what it takes up of each dye; `uptakeEach`: of an area at depth 1 [mL or g]. */
export function dipMixed(
  bath: WorkedBath & { dyeEach: readonly number[] },
  aim: MixedAim,
  before: readonly number[],
  uptakeEach: readonly number[],
): MixedDip {
  const dip = aim({ before, halfSpent: uptakeEach.map((uptake, i) => uptake / (2 * bath.dyeEach[i]!)) });
  bath.takenUpEach = uptakeEach.map((uptake, i) => uptake * dip.depths[i]!);
  bath.takenUp = exactSum(bath.takenUpEach);
  return dip;
}

/** What is left of each dye when parts have taken theirs up and carried a share of the liquor out. */
export function carryOutEach(bath: WorkedBath & { dyeEach: readonly number[] }, share: number): void {
  const dipped = bath.dyeEach.map((dye, i) => dye - bath.takenUpEach[i]!);
  bath.draggedOutEach = dipped.map((dye) => dye * share);
  bath.dyeEach = dipped.map((dye, i) => dye - bath.draggedOutEach[i]!);
  bath.dye = exactSum(bath.dyeEach);
}

/** Pours some of each dye into a mixed bath. */
export function pourEach(bath: WorkedBath & { dyeEach: readonly number[] }, added: readonly number[]): void {
  bath.topUpDyeEach = added;
  bath.dyeEach = bath.dyeEach.map((dye, i) => dye + added[i]!);
  bath.dye = exactSum(bath.dyeEach);
}

/** Whether a bath holds several dyes. */
export const isMixed = <Bath extends BathState>(bath: Bath): bath is Bath & { dyeEach: readonly number[] } =>
  bath.dyeEach !== undefined;
