import { equivalentSeconds } from "../../uptake/law/dip-time.js";
import { freshDepth } from "../../uptake/law/uptake-model.js";
import { dip } from "../heat/working/dip.js";
import { immerseParts } from "../heat/working/heat-state.js";
import { hold } from "../heat/working/hold.js";
import { strengthOf } from "../load/bath-setting.js";
import { finishLoad } from "../load/finish-load.js";
import { rackSeconds } from "../load/handling-seconds.js";
import { type LoadWork, loadJPerK } from "../load/load-work.js";
import { rackAndWait } from "../load/work-load.js";
import type { RealBath, ReplayedBath } from "./real-bath.js";

/** A load that was dipped: as long as a clock showed, or as long as its shade takes. */
export interface RealLoad extends Pick<LoadWork, "part" | "parts"> {
  readonly dipped: { readonly seconds: number } | { readonly freshSeconds: number };
  /** Of the bath just before the parts went in [°C]; absent: as it follows. */
  readonly celsius?: number;
}

/** What the load is, by the arithmetic: the time that gives its depth in a fresh bath, and that depth. */
export interface RealDip {
  readonly freshSeconds: number;
  readonly depth: number;
}

/** What a clock at the bath's own temperature shows after so many seconds in it as it cools and warms. */
function setSecondsOf({ setting: { heat, pace } }: RealBath, bath: ReplayedBath, seconds: number): number {
  let set = seconds * pace(bath.celsius);
  for (let round = 0; round < 6; round++) {
    const tried = { ...bath };
    const missing = seconds - dip(heat, tried, set, pace);
    set = Math.max(0, set + missing * pace(tried.celsius));
    if (Math.abs(missing) < 1e-9 * seconds) break;
  }
  return set;
}

const mostRounds = 60;

/** The depth that so many seconds at the bath's own temperature give, with the strength falling meanwhile. */
function depthReached(
  { uptake, madeUp, setting }: RealBath,
  bath: ReplayedBath,
  strengthBefore: number,
  areaDm2: number,
  setSeconds: number,
): RealDip {
  const strength = strengthBefore * madeUp;
  const whole = setting.dye.uptakePerDm2 * areaDm2;
  let takenUp = 0;
  let found: RealDip = { freshSeconds: 0, depth: 0 };
  for (let round = 0; round < mostRounds && bath.dye > 0; round++) {
    const during = strength * (1 - takenUp / (2 * bath.dye));
    const freshSeconds = equivalentSeconds(uptake, {
      seconds: setSeconds,
      strength: during,
      celsius: setting.heat.celsius,
    });
    found = { freshSeconds, depth: freshDepth(uptake, freshSeconds) };
    const next = Math.min(bath.dye, whole * found.depth);
    const moved = Math.abs(next - takenUp);
    takenUp = next;
    if (moved <= 1e-12 * bath.dye) break;
  }
  return found;
}

/**
 * A load as it was really dipped: `workOn` with the time known and the depth sought. It is racked, waited for where no
 * temperature was read, dipped, drained, rinsed and unloaded; nothing is topped up.
 */
export function replayLoad(real: RealBath, bath: ReplayedBath, load: RealLoad): RealDip {
  const { setting, uptake } = real;
  const { heat, fresh } = setting;
  const { part, parts, dipped } = load;
  const areaDm2 = parts * part.areaDm2;
  bath.seconds = 0;
  bath.evaporatedL = 0;
  // Whoever dips has heated the bath before.
  if (!bath.heated) bath.celsius = Math.max(bath.celsius, heat.celsius);
  bath.heated = true;
  let waitSeconds = 0;
  let volumeBeforeL = bath.volumeL;
  const ready =
    load.celsius === undefined ? rackAndWait(setting, bath, rackSeconds(setting, parts)) : undefined;
  if (ready !== undefined) ({ waitSeconds, volumeBeforeL } = ready);
  else if (load.celsius !== undefined) {
    hold(heat, heat.covered, bath, rackSeconds(setting, parts));
    bath.celsius = load.celsius;
  }
  const strengthBefore = strengthOf({ volumeL: volumeBeforeL, dye: bath.dye }, fresh);
  const celsiusBefore = bath.celsius;
  immerseParts(heat, bath, { jPerK: loadJPerK(load), celsius: setting.partsCelsius });
  const found =
    "seconds" in dipped
      ? depthReached(real, bath, strengthBefore, areaDm2, setSecondsOf(real, bath, dipped.seconds))
      : { freshSeconds: dipped.freshSeconds, depth: freshDepth(uptake, dipped.freshSeconds) };
  const takenUp = Math.min(bath.dye, setting.dye.uptakePerDm2 * areaDm2 * found.depth);
  const strengthDuring = bath.dye > 0 ? strengthBefore * (1 - takenUp / (2 * bath.dye)) : 0;
  const setSeconds = setting.timer(found.freshSeconds, strengthDuring);
  const dipSeconds = Number.isFinite(setSeconds) ? dip(heat, bath, setSeconds, setting.pace) : 0;
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
  return found;
}
