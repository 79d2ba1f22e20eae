import { findRoot } from "../../maths/root.js";
import type { Dilution } from "../../model/batch.js";
import { atStrength, volumeShare } from "../../quantity/dye/dilution.js";
import { dyeKinds } from "../../quantity/dye/dye-kinds.js";
import { pourTopUp } from "../heat/working/heat-state.js";
import { hold } from "../heat/working/hold.js";
import { type BathSetting, strengthOf } from "../load/bath-setting.js";
import type { LoadWork } from "../load/load-work.js";
import { workOn } from "../load/work-load.js";
import { bathToWork, type WorkedBath } from "../load/worked-bath.js";

/** What one load lost, poured back after it. Amounts of water and dye are cold, dye in mL of concentrate or g of powder. */
export interface SteadyPour {
  readonly hotL: number;
  readonly coldMl: number;
  readonly dye: number;
  readonly waterMl: number;
  readonly dipSeconds: number;
  readonly strengthBefore: number;
  readonly strengthAfter: number;
}

/** The liquor that keeps a bath what it was when poured up to the mark after each load. */
export interface SteadyTopUp {
  /** mL of concentrate or g of powder per hot litre. */
  readonly dyePerL: number;
  /** Relative to the fresh bath: 1.4 is liquor of 140 % strength, 0 plain water. */
  readonly strength: number;
  /** How to mix it cold; absent where it would have to be stronger than the concentrate itself. */
  readonly dilution?: Dilution;
  readonly loads: readonly SteadyPour[];
}

/**
 * Works the mix once on the fresh bath, filled up with that liquor after each load, and tells how much dye the bath
 * gained; undefined where a load cannot be done. `see` is shown the bath after each load.
 */
function repeatOnce(
  setting: BathSetting,
  mix: readonly LoadWork[],
  dyePerL: number,
  see?: (worked: WorkedBath) => void,
): number | undefined {
  const { fresh } = setting;
  const untopped: BathSetting = { ...setting, rule: "none" };
  const bath = bathToWork(fresh, setting.heat.celsius);
  for (const load of mix) {
    if (workOn(bath, untopped, load) !== undefined) return undefined;
    hold(setting.heat, setting.heat.covered, bath, setting.handling.topUpSeconds ?? 0);
    const pouredL = Math.max(0, fresh.volumeL - bath.volumeL);
    bath.dye += pouredL * dyePerL;
    pourTopUp(setting.heat, bath, { volumeL: pouredL, celsius: setting.topUpCelsius });
    see?.(bath);
  }
  return bath.dye - fresh.dye;
}

/**
 * The top-up liquor that holds a bath steady for a mix of loads: poured up to the mark after each load, it brings
 * the bath back to strength 1 after each repetition of the mix.
 *
 * For loads that are all alike c_top = (u + c V_drag)/(V_evap + V_drag): u dye that parts take up [mL or g], c dye
 * per litre of what drains off the parts, which is the bath after its dip [mL/L or g/L], volumes hot [L]. For
 * unlike loads the strength sways within a repetition, and c_top is the root of what a repetition gains.
 * Undefined for a mix, where nothing leaves the bath to be poured back, or a load cannot be dyed at strength 1.
 */
export function steadyTopUp(setting: BathSetting, mix: readonly LoadWork[]): SteadyTopUp | undefined {
  const { fresh, coldPerHot, dye } = setting;
  // Several dyes leave a bath each at its own rate: no one liquor of them all is found.
  if (fresh.dyeEach !== undefined) return undefined;
  const freshPerL = fresh.dye / fresh.volumeL;
  // A liquor so weak that a load fails is weaker than the one sought.
  const gain = (dyePerL: number): number => repeatOnce(setting, mix, dyePerL) ?? -fresh.dye;
  const found = steadyDyePerL(gain, freshPerL);
  if (found === undefined) return undefined;
  const { takesRoom } = dyeKinds[dye.dilution.kind];
  const loads: SteadyPour[] = [];
  const gained = repeatOnce(setting, mix, found, (bath) => {
    const hotL = bath.draggedOutL + bath.evaporatedL;
    const coldMl = 1000 * hotL * coldPerHot;
    loads.push({
      hotL,
      coldMl,
      dye: hotL * found,
      waterMl: takesRoom ? Math.max(0, coldMl - hotL * found) : coldMl,
      dipSeconds: bath.dipSeconds,
      strengthBefore: bath.strengthBefore,
      strengthAfter: strengthOf(bath, fresh),
    });
  });
  if (gained === undefined) return undefined;
  const strength = found / freshPerL;
  return { dyePerL: found, strength, ...dilutionAt(dye.dilution, strength), loads };
}

function steadyDyePerL(gain: (dyePerL: number) => number, freshPerL: number): number | undefined {
  if (gain(0) >= 0) return gain(0) === 0 && gain(freshPerL) > 0 ? 0 : undefined;
  let high = freshPerL;
  for (let doublings = 0; gain(high) < 0; doublings++) {
    if (doublings === 60) return undefined;
    high *= 2;
  }
  return findRoot(gain, { low: 0, high });
}

function dilutionAt(fresh: Dilution, strength: number): { readonly dilution?: Dilution } {
  const dilution = atStrength(fresh, strength);
  return volumeShare(dilution) <= 1 ? { dilution } : {};
}
