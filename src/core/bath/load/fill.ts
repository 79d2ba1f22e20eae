import { dyeKinds } from "../../quantity/dye/dye-kinds.js";
import { pourTopUp } from "../heat/working/heat-state.js";
import { type BathSetting, strengthOf } from "./bath-setting.js";
import { topUpBelow } from "./load-size.js";
import { topUpRecords } from "./top-up-rules.js";
import type { WorkedBath } from "./worked-bath.js";

/** A bath is topped up while it holds so much more than the least that its heater needs. Common practice, no source. */
const leastMargin = 1.02;

/**
 * Adds what the bath's rule asks for now, if anything: its dye, and water for the rest up to the working volume. What is
 * poured in cools the bath as two waters mix. `below`: how much of its mark or strength a bath may lack before it is
 * topped up; 1 fills any shortfall.
 */
export function fill(setting: BathSetting, bath: WorkedBath, below: number = topUpBelow): void {
  const { dye, rule, fresh, coldPerHot } = setting;
  bath.toppedUp = false;
  bath.topUpDye = 0;
  bath.topUpWaterMl = 0;
  bath.topUpShort = false;
  const { keepsLevel, keepsStrength, dye: dyeAsked } = topUpRecords[rule];
  const low =
    keepsLevel && bath.volumeL < Math.max(below * fresh.volumeL, leastMargin * (setting.tank.leastL ?? 0));
  const weak = keepsStrength && strengthOf(bath, fresh) < below;
  if (!low && !weak) return;
  const deficitL = Math.max(0, fresh.volumeL - bath.volumeL);
  const coldMl = 1000 * deficitL * coldPerHot;
  const { takesRoom } = dyeKinds[dye.dilution.kind];
  const wanted = dyeAsked(bath, fresh, deficitL);
  // What takes up room under the mark goes in as far as there is room.
  const added = takesRoom ? Math.min(wanted, coldMl) : wanted;
  bath.topUpShort = added < wanted;
  if (added === 0 && coldMl === 0) return;
  bath.toppedUp = true;
  bath.topUpDye = added;
  bath.topUpWaterMl = takesRoom ? coldMl - added : coldMl;
  bath.dye += added;
  if (deficitL === 0) return;
  pourTopUp(setting.heat, bath, { volumeL: deficitL, celsius: setting.topUpCelsius });
  // To the mark exactly, not to a rounding error beside it.
  bath.volumeL = fresh.volumeL;
}
