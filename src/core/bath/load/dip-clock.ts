import { dip } from "../heat/working/dip.js";
import { immerseParts } from "../heat/working/heat-state.js";
import type { BathSetting } from "./bath-setting.js";
import { type LoadWork, loadJPerK, makeReady } from "./work-load.js";
import type { WorkedBath } from "./worked-bath.js";

/**
 * What a clock shows [s] when a dip in this bath has done what so many seconds do at the bath's own temperature: the bath
 * is racked, waited for and cooled by the parts as in `workOn`. The bath stays as it is.
 */
export function dipClock(
  setting: BathSetting,
  bath: WorkedBath,
  load: LoadWork,
): (setSeconds: number) => number {
  const ready = { ...bath };
  makeReady(setting, ready, load.parts);
  immerseParts(setting.heat, ready, { jPerK: loadJPerK(load), celsius: setting.partsCelsius });
  return (setSeconds) =>
    setSeconds < Number.POSITIVE_INFINITY
      ? dip(setting.heat, { ...ready }, setSeconds, setting.pace)
      : setSeconds;
}
