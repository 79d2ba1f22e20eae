import { dyeKinds } from "../../quantity/dye/dye-kinds.js";
import { pourTopUp } from "../heat/working/heat-state.js";
import { bathToWork } from "../load/worked-bath.js";
import { dyeOf, makeUp } from "../make-up/make-up.js";
import type { RealBath, ReplayedBath } from "./real-bath.js";

/** What was poured, measured cold, dye in mL or g, and the level after it; what is absent was not written down. */
export interface RealAmounts {
  readonly dye?: number;
  readonly waterMl?: number;
  /** Hot. */
  readonly volumeL?: number;
  /** Of the bath after it. */
  readonly celsius?: number;
}

/** A new filling: by its level, else by what was poured, else as the batch file makes it up. */
export function realMakeUp({ setting }: RealBath, poured: RealAmounts, roomCelsius: number): ReplayedBath {
  const { dilution } = setting.dye;
  const { takesRoom } = dyeKinds[dilution.kind];
  const { waterMl, dye } = poured;
  const dyeIn = (volumeHotL: number): number =>
    dyeOf(makeUp({ volumeHotL, celsius: setting.heat.celsius, roomCelsius, dilution }));
  const byAmounts = (): number => {
    if (waterMl === undefined) return setting.fresh.volumeL;
    const perHotL = dyeIn(1);
    if (!takesRoom) return waterMl / 1000 / setting.coldPerHot;
    return dye === undefined
      ? waterMl / (1000 * setting.coldPerHot - perHotL)
      : (waterMl + dye) / 1000 / setting.coldPerHot;
  };
  const volumeL = poured.volumeL ?? byAmounts();
  return {
    ...bathToWork({ volumeL, dye: dye ?? dyeIn(volumeL) }, poured.celsius ?? roomCelsius),
    heated: false,
  };
}

/** A top-up as it was really done: to the level that was read, else to the mark. */
export function realTopUp({ setting }: RealBath, bath: ReplayedBath, poured: RealAmounts): void {
  const volumeL = poured.volumeL ?? setting.fresh.volumeL;
  const addedL = volumeL - bath.volumeL;
  bath.dye += poured.dye ?? 0;
  if (addedL > 0) pourTopUp(setting.heat, bath, { volumeL: addedL, celsius: setting.topUpCelsius });
  bath.volumeL = volumeL;
  if (poured.celsius !== undefined) bath.celsius = poured.celsius;
}
