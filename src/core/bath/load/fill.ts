import { exactSum } from "../../maths/exact-sum.js";
import { smallest } from "../../maths/extent.js";
import { dyeKinds } from "../../quantity/dye/dye-kinds.js";
import { pourTopUp } from "../heat/working/heat-state.js";
import { hold } from "../heat/working/hold.js";
import { type BathSetting, strengthOf } from "./bath-setting.js";
import type { BathState } from "./bath-state.js";
import { isMixed, pourEach, strengthEach } from "./mixed-load.js";
import { topUpRecords } from "./top-up-rules.js";
import type { WorkedBath } from "./worked-bath.js";

/** A bath is topped up while it holds so much more than the least that its heater needs. Common practice, no source. */
const leastMargin = 1.02;

/**
 * Adds what the bath's rule asks for now, if anything: its dye, and water for the rest up to the working volume. What is
 * poured in cools the bath as two waters mix. `below`: how much of its mark or strength a bath may lack before it is
 * topped up; 1 fills any shortfall. `seconds`: to measure and pour it, lid on till it goes in; gives those that it took.
 */
export function fill(setting: BathSetting, bath: WorkedBath, below: number, seconds = 0): number {
  const { dye, rule, fresh } = setting;
  bath.toppedUp = false;
  bath.topUpDye = 0;
  if (isMixed(bath)) bath.topUpDyeEach = bath.dyeEach.map(() => 0);
  bath.topUpWaterMl = 0;
  bath.topUpShort = false;
  const { keepsLevel, keepsStrength } = topUpRecords[rule];
  const low =
    keepsLevel && bath.volumeL < Math.max(below * fresh.volumeL, leastMargin * (setting.tank.leastL ?? 0));
  const weak = keepsStrength && weakest(bath, fresh) < below;
  if (!low && !weak) return 0;
  let pour = pourOf(setting, bath);
  bath.topUpShort = pour.added < pour.wanted;
  if (pour.added === 0 && pour.coldMl === 0) return 0;
  if (seconds > 0) {
    hold(setting.heat, setting.heat.covered, bath, seconds);
    pour = pourOf(setting, bath);
    bath.topUpShort = pour.added < pour.wanted;
  }
  const { deficitL, coldMl, added, addedEach } = pour;
  bath.toppedUp = true;
  bath.topUpDye = added;
  bath.topUpWaterMl = dyeKinds[dye.dilution.kind].takesRoom ? coldMl - added : coldMl;
  if (isMixed(bath)) pourEach(bath, addedEach!);
  else bath.dye += added;
  if (deficitL > 0) {
    pourTopUp(setting.heat, bath, { volumeL: deficitL, celsius: setting.topUpCelsius });
    // To the mark exactly, not to a rounding error beside it.
    bath.volumeL = fresh.volumeL;
  }
  return seconds;
}

/** Strength of the dye, or of the weakest of a mix. */
export const weakest = (bath: BathState, fresh: BathState): number =>
  isMixed(bath) ? smallest(strengthEach(bath, fresh)) : strengthOf(bath, fresh);

/** What brings a bath up to its mark by its rule: hot litres, what they are cold, the dye asked for and what has room. */
function pourOf({ dye, rule, fresh, coldPerHot }: BathSetting, bath: BathState) {
  const deficitL = Math.max(0, fresh.volumeL - bath.volumeL);
  const coldMl = 1000 * deficitL * coldPerHot;
  const wantedEach = bath.dyeEach?.map((own, i) =>
    topUpRecords[rule].dye(
      { volumeL: bath.volumeL, dye: own },
      { volumeL: fresh.volumeL, dye: fresh.dyeEach![i]! },
      deficitL,
    ),
  );
  const wanted =
    wantedEach === undefined ? topUpRecords[rule].dye(bath, fresh, deficitL) : exactSum(wantedEach);
  // What takes up room under the mark goes in as far as there is room.
  const added = dyeKinds[dye.dilution.kind].takesRoom ? Math.min(wanted, coldMl) : wanted;
  const addedEach = wantedEach?.map((one) => (wanted > 0 ? one * (added / wanted) : 0));
  return { deficitL, coldMl, wanted, added, addedEach };
}
