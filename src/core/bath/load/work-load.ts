import { bathLossW } from "../heat/working/bath-heat.js";
import { dip } from "../heat/working/dip.js";
import { type HeatState, immerseParts, isDry, liftParts } from "../heat/working/heat-state.js";
import { hold } from "../heat/working/hold.js";
import { riseTo } from "../heat/working/rise-and-fall.js";
import { type BathSetting, strengthOf } from "./bath-setting.js";
import type { BathState } from "./bath-state.js";
import { fill } from "./fill.js";
import { finishLoad } from "./finish-load.js";
import { rackSeconds, rinseChangeSeconds } from "./handling-seconds.js";
import { loadSize, topUpBelow } from "./load-size.js";
import { type LoadWork, loadJPerK } from "./load-work.js";
import { dipMixed, isMixed, strengthEach } from "./mixed-load.js";
import type { WorkedBath } from "./worked-bath.js";

/**
 * Why a load is not worked: the bath holds less dye than its parts take up, the dip would take longer than the longest,
 * there is too little liquor for the heater or the load, the heater does not bring the bath back, or a mix has left its
 * shade.
 */
export type Hindrance =
  | "too-little-dye"
  | "longest-dip"
  | "too-little-liquor"
  | "heater-too-weak"
  | "off-shade";

/** The most parts of a kind that the bath takes as it is now. */
export const mostParts = (
  { tank, handling }: BathSetting,
  { volumeL }: BathState,
  part: LoadWork["part"],
): number => loadSize(part, tank, handling, volumeL).parts;

/**
 * Racks a load for so many seconds and waits, lid on, until the bath is warm enough for it; gives the seconds of the wait,
 * or undefined where the heater does not get it there.
 */
export function makeReady(
  { heat, handling }: BathSetting,
  bath: HeatState,
  seconds: number,
): number | undefined {
  hold(heat, heat.covered, bath, seconds);
  return riseTo(heat, bath, heat.celsius - handling.belowKelvin);
}

/**
 * `makeReady`, with the volume that the strength of the dip is counted with; undefined where the heater does not get the
 * bath there. What evaporates in a wait makes the bath stronger before the dip. That of racking is counted with the rest
 * of the cycle, after it: so a bath that need not wait is as strong as it was left.
 */
export function rackAndWait(
  { heat, handling }: BathSetting,
  bath: HeatState,
  seconds: number,
): { readonly waitSeconds: number; readonly volumeBeforeL: number } | undefined {
  const startL = bath.volumeL;
  hold(heat, heat.covered, bath, seconds);
  const rackedL = bath.volumeL;
  const waitSeconds = riseTo(heat, bath, heat.celsius - handling.belowKelvin);
  if (waitSeconds === undefined) return undefined;
  return { waitSeconds, volumeBeforeL: startL - (rackedL - bath.volumeL) };
}

/**
 * Whether a load need not wait for the heater, as far as that shows without following the bath: it is warm enough now, and
 * the heater holds it, lid on.
 */
export const isSurelyReady = ({ heat, handling }: BathSetting, { celsius }: HeatState): boolean =>
  celsius >= heat.celsius - handling.belowKelvin &&
  heat.covered.heatingW >= bathLossW(heat, heat.covered.openM2, Math.max(celsius, heat.celsius));

/**
 * One load: the rinse water changed where it must be, then racked, waited for, dipped, drained, rinsed and unloaded, then
 * the top-up. The time follows from the mean of
 * the strengths before and after the dip and from the temperature, which the parts lower. Where it cannot be worked,
 * the hindrance is given, and the dye in the bath is as it was.
 */
export function workOn(
  bath: WorkedBath,
  setting: BathSetting,
  load: LoadWork,
  longestSeconds = Number.POSITIVE_INFINITY,
): Hindrance | undefined {
  const { dye, timer, fresh, heat } = setting;
  const { part, parts } = load;
  if (isDry(bath) || mostParts(setting, bath, part) < 1) return "too-little-liquor";
  const areaDm2 = parts * part.areaDm2;
  // Of several dyes that is known only when their dip is found, and is never more than there is.
  let takenUp = isMixed(bath) ? 0 : dye.uptakePerDm2 * areaDm2 * load.depth;
  if (bath.dye - takenUp < 0 || bath.dye === 0) return "too-little-dye";
  // Counted from zero: the difference of two times of a clock of weeks loses digits.
  bath.seconds = 0;
  bath.evaporatedL = 0;
  const changeSeconds = rinseChangeSeconds(setting, bath.loadsRinsed);
  const ready = rackAndWait(setting, bath, changeSeconds + rackSeconds(setting, parts));
  if (ready === undefined) return "heater-too-weak";
  const { waitSeconds, volumeBeforeL } = ready;
  const strengthBefore = strengthOf({ volumeL: volumeBeforeL, dye: bath.dye }, fresh);
  if (isMixed(bath)) {
    const before = strengthEach({ volumeL: volumeBeforeL, dye: bath.dye, dyeEach: bath.dyeEach }, fresh);
    const uptakeEach = setting.uptakeEachPerDm2!.map((uptake) => uptake * areaDm2);
    bath.mixedDip = dipMixed(bath, load.mixed!, before, uptakeEach);
    if (!bath.mixedDip.onShade && longestSeconds < Number.POSITIVE_INFINITY) return "off-shade";
    takenUp = bath.takenUp;
  }
  const dippedDye = bath.dye - takenUp;
  const strengthDuring = strengthBefore * ((bath.dye + dippedDye) / (2 * bath.dye));
  const setSeconds = bath.mixedDip?.seconds ?? timer(load.freshSeconds, strengthDuring);
  if (!(setSeconds < Number.POSITIVE_INFINITY)) return "too-little-dye";
  const celsiusBefore = bath.celsius;
  immerseParts(heat, bath, { jPerK: loadJPerK(load), celsius: setting.partsCelsius });
  const dipSeconds = dip(heat, bath, setSeconds, setting.pace);
  if (dipSeconds > longestSeconds) {
    liftParts(bath);
    return "longest-dip";
  }
  finishLoad(bath, setting, load, {
    takenUp,
    dipSeconds,
    setSeconds,
    waitSeconds,
    celsiusBefore,
    strengthBefore,
    strengthDuring,
    volumeBeforeL,
  });
  bath.loadsRinsed++;
  bath.tendingSeconds = changeSeconds + fill(setting, bath, topUpBelow, setting.handling.topUpSeconds);
  bath.cycleSeconds += bath.tendingSeconds;
  return undefined;
}
