import type { BathSetting } from "./bath-setting.js";

/** Changing the rinse water where it has served its loads [s]; the first filling is part of the set-up. */
export const rinseChangeSeconds = ({ handling }: BathSetting, loadsRinsed: number): number =>
  loadsRinsed > 0 && loadsRinsed % handling.rinseEvery === 0 ? (handling.rinseChangeSeconds ?? 0) : 0;

/** Racking, lid on [s]. */
export const rackSeconds = ({ handling }: BathSetting, parts: number): number =>
  handling.loadSeconds + parts * handling.loadPartSeconds;

/** Draining, rinsing and unloading, lid off [s]. */
export const openSeconds = ({ handling }: BathSetting, parts: number): number =>
  handling.drainSeconds + handling.rinseSeconds + handling.unloadSeconds + parts * handling.unloadPartSeconds;

/** From racking to the last part off, without any wait [s]. */
export const cycleSeconds = (setting: BathSetting, parts: number, dipSeconds: number): number =>
  rackSeconds(setting, parts) + dipSeconds + openSeconds(setting, parts);
