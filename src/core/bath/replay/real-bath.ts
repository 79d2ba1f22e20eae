import type { UptakeModel } from "../../uptake/law/uptake-model.js";
import { hold } from "../heat/working/hold.js";
import { fallTo } from "../heat/working/rise-and-fall.js";
import type { BathSetting } from "../load/bath-setting.js";
import type { WorkedBath } from "../load/worked-bath.js";

/** A bath as it really is worked, and how its dye goes in. */
export interface RealBath {
  readonly setting: BathSetting;
  readonly uptake: UptakeModel;
  /** Strength of a fresh bath, relative to the bath that the dye was measured in: `madeUpStrength`. */
  readonly madeUp: number;
  /** Where a bath that has been switched off is emptied [°C]. */
  readonly coolToCelsius: number;
}

/** A bath between two events. */
export interface ReplayedBath extends WorkedBath {
  /** Somebody works at it, so that its heater is on. */
  heated: boolean;
}

/** After so long without an event the heater counts as off [s]. Common practice, no source. */
const heaterStaysOn = 1800;

/**
 * Time [s] passes in which nothing is done: the lid is on, and after half an hour the heater counts as off. A bath that
 * is left over night cools as at the end of a day, everything off and lid off, until it can be emptied.
 */
export function passTime(real: RealBath, bath: ReplayedBath, seconds: number, overNight: boolean): void {
  const { heat } = real.setting;
  const heated = bath.heated ? Math.min(seconds, heaterStaysOn) : 0;
  if (heated > 0) hold(heat, heat.covered, bath, heated);
  if (heated === seconds) return;
  bath.heated = false;
  if (bath.celsius <= real.coolToCelsius) return;
  if (overNight) fallTo(heat, bath, real.coolToCelsius);
  else hold(heat, { ...heat.covered, heatingW: 0 }, bath, seconds - heated);
}
