import { type DipTimer, equivalentSeconds, type UptakeModel } from "../law/depth.js";
import type { ShadeAim } from "./aim.js";

/** Times [s] at which the ends of a shade's window are reached at a strength; a far end of null is never reached. */
export function dipWindow(
  timer: DipTimer,
  { window }: ShadeAim,
  strength: number,
): readonly [number, number | null] | null {
  const from = window ? timer(window.from, strength) : undefined;
  if (!window || from === undefined) return null;
  return [from, window.to === null ? null : (timer(window.to, strength) ?? null)];
}

/**
 * CIEDE2000 per second at a dip of a strength: that of a fresh bath, slowed as the dip itself is. dt_fresh/dt is the
 * ratio of what a depth larger by 1e-4 of itself takes longer in the fresh bath and in this one. Null where no colour
 * is known or the depth is not reached.
 */
export function dipSlope(
  model: UptakeModel,
  timer: DipTimer,
  { depth, slopePerFreshSecond }: ShadeAim,
  strength: number,
): number | null {
  const deeper = depth * (1 + 1e-4);
  const [now, later] = [timer(depth, strength), timer(deeper, strength)];
  const [freshNow, freshLater] = [equivalentSeconds(model, depth), equivalentSeconds(model, deeper)];
  if (now === undefined || later === undefined || freshNow === undefined || freshLater === undefined)
    return null;
  if (slopePerFreshSecond === null || later <= now) return null;
  return (slopePerFreshSecond * (freshLater - freshNow)) / (later - now);
}
