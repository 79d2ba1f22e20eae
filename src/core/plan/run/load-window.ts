import type { ShadeAim } from "../../uptake/shade/aim.js";
import { dipSlope, dipWindow } from "../../uptake/shade/dip-window.js";
import type { BathRun, LoadResult } from "./bath-run.js";

/** Times [s] on the clock at which a load comes into tolerance and leaves it, in the bath as it cools and warms. */
export function loadWindow(
  { setting }: BathRun,
  aim: ShadeAim,
  { strengthDuring, clock, mixedDip }: LoadResult,
): readonly [number, number | null] | null {
  const window = mixedDip === undefined ? dipWindow(setting.timer, aim, strengthDuring) : mixedDip.window();
  if (window === null) return null;
  const [from, to] = window;
  return [clock(from), to === null ? null : clock(to)];
}

/** CIEDE2000 per second on the clock at the end of a load's dip; null where no colour is known. */
export function loadSlope({ setting }: BathRun, aim: ShadeAim, result: LoadResult): number | null {
  const slope = result.mixedDip?.slopePerSecond() ?? dipSlope(setting.timer, aim, result.strengthDuring);
  return slope === null ? null : slope * setting.pace(result.celsiusAfter);
}
