import { dip } from "../heat/working/dip.js";
import { copyOfHeat, type HeatState, immerseParts } from "../heat/working/heat-state.js";
import type { BathSetting } from "./bath-setting.js";
import { type LoadWork, loadJPerK } from "./load-work.js";
import { makeReady } from "./work-load.js";

/**
 * What a clock shows [s] when a dip in this bath has done what so many seconds do at the bath's own temperature: the bath
 * is racked, waited for and cooled by the parts as in `workOn`. The bath stays as it is.
 */
export function dipClock(
  setting: BathSetting,
  bath: HeatState,
  load: LoadWork,
  /** From the bath as it is to the load racked. */
  rackedSeconds: number,
): (setSeconds: number) => number {
  // Few clocks are ever read.
  let ready: HeatState | undefined;
  return (setSeconds) => {
    if (!(setSeconds < Number.POSITIVE_INFINITY)) return setSeconds;
    if (ready === undefined) {
      ready = copyOfHeat(bath);
      makeReady(setting, ready, rackedSeconds);
      immerseParts(setting.heat, ready, { jPerK: loadJPerK(load), celsius: setting.partsCelsius });
    }
    return dip(setting.heat, copyOfHeat(ready), setSeconds, setting.pace);
  };
}
